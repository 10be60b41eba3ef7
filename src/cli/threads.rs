//! Work shared out over threads, with what comes of it in the order in which it came in.

use std::num::NonZero;
use std::{mem, panic, thread};

/// What is made of each, in the same order whatever the number of threads.
pub(super) fn shared_out<T: Send, U: Send>(
    threads: NonZero<usize>,
    mut batch: Vec<T>,
    work: impl Fn(T) -> U + Sync,
) -> Vec<U> {
    if threads.get() == 1 {
        return batch.into_iter().map(work).collect();
    }
    let share = batch.len().div_ceil(threads.get());
    let work = &work;
    thread::scope(|scope| {
        let mut running = Vec::new();
        while !batch.is_empty() {
            let rest = batch.split_off(share.min(batch.len()));
            let own = mem::replace(&mut batch, rest);
            running.push(scope.spawn(move || own.into_iter().map(work).collect::<Vec<U>>()));
        }
        let done = running.into_iter().map(|one| one.join().unwrap_or_else(|fault| panic::resume_unwind(fault)));
        done.flatten().collect()
    })
}
