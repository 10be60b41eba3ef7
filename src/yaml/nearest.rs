//! The word that was probably meant.

/// Jaro-Winkler likeness below which a guess confuses more than it helps.
const ALIKE: f64 = 0.85;
/// Letters for each that may be wrong in a word.
const LETTERS: usize = 5;

/// What was probably meant, the likeliest first; none where no guess is good. `meanings` are words of the trade with the keys
/// that stand for them.
pub(super) fn guesses<'a>(read: &str, words: &[&'a str], meanings: &[(&str, &[&'a str])]) -> Vec<&'a str> {
    let normal = normal(read);
    let told = |read: &str| meanings.iter().find(|(word, _)| *word == read).map(|(_, keys)| keys.to_vec());
    let near = || nearest(read, words).map(|word| vec![word]);
    // Of "London clay" the clay is known, in sandy clay the noun stands last.
    let noun = || {
        let key = |part: &str| words.iter().find(|word| **word == part).map(|word| vec![*word]);
        normal.split('_').skip(1).last().and_then(|part| told(part).or_else(|| key(part)))
    };
    told(&normal).or_else(near).or_else(noun).unwrap_or_default()
}

/// A question that names what was probably meant, with a blank behind it; nothing where no guess is good.
pub(crate) fn did_you_mean(read: &str, words: &[&str], meanings: &[(&str, &[&str])]) -> String {
    asked(&guesses(read, words, meanings))
}

/// A question whether one of these was meant, with a blank behind it; nothing where there is none.
pub(super) fn asked(keys: &[&str]) -> String {
    if keys.is_empty() {
        return String::new();
    }
    let keys: Vec<String> = keys.iter().map(|key| format!("\"{key}\"")).collect();
    format!("did you mean {}? ", keys.join(" or "))
}

/// The one key that people mean by what was read: the same written otherwise, a word of the trade that stands for it alone,
/// or as many of its words as no other key has.
pub(crate) fn meant<'a>(read: &str, words: &[&'a str], meanings: &[(&str, &[&'a str])]) -> Option<&'a str> {
    let normal = normal(read);
    if let Some((_, keys)) = meanings.iter().find(|(word, _)| *word == normal) {
        return if let [only] = keys { Some(only) } else { None };
    }
    words.iter().find(|word| self::normal(word) == normal).copied().or_else(|| with_all(&normal, words))
}

/// The same, where it cannot be another: one word alone is no part of a key.
pub(crate) fn meant_surely<'a>(read: &str, words: &[&'a str], meanings: &[(&str, &[&'a str])]) -> Option<&'a str> {
    let normal = normal(read);
    let is_whole = normal.contains('_')
        || words.iter().any(|word| self::normal(word) == normal)
        || meanings.iter().any(|(word, _)| *word == normal);
    meant(read, words, meanings).filter(|_| is_whole)
}

/// As keys are written: small letters, and `_` between words.
fn normal(read: &str) -> String {
    read.trim().to_lowercase().split([' ', '-', '_']).filter(|word| !word.is_empty()).collect::<Vec<_>>().join("_")
}

/// A letter or two changed, left out, put in or swapped, by the length of the word.
fn is_slip(read: &str, word: &str) -> bool {
    strsim::osa_distance(read, word) <= (read.chars().count() / LETTERS).max(1)
}

/// The key that `read` was probably meant to be: one written otherwise or with a slip; the only one that has all its
/// words; or one that is alike word by word. A key that has another word in place of one that was read is none: soft
/// clay is no guess for soft sand.
fn nearest<'a>(read: &str, words: &[&'a str]) -> Option<&'a str> {
    let normal = normal(read);
    let likeness = |word: &&&str| strsim::jaro_winkler(&normal, &word.to_lowercase());
    if let Some(same) = words.iter().find(|word| self::normal(word) == normal) {
        return Some(same);
    }
    let slips = words.iter().filter(|word| is_slip(&normal, &word.to_lowercase()));
    if let Some(slip) = slips.max_by(|a, b| likeness(a).total_cmp(&likeness(b))) {
        return Some(slip);
    }
    if let Some(only) = with_all(&normal, words) {
        return Some(only);
    }
    let read_parts = parts(&normal);
    let alike = |word: &&&str| {
        let own = parts(word);
        read_parts.len() < 2 || read_parts.iter().all(|part| own.iter().any(|own| is_slip(part, own)))
    };
    let best = words.iter().filter(alike).max_by(|a, b| likeness(a).total_cmp(&likeness(b)))?;
    (likeness(&best) >= ALIKE).then_some(*best)
}

fn parts(text: &str) -> Vec<String> {
    text.split(['_', '.', ' ']).map(str::to_lowercase).collect()
}

/// The only key that has all the words that were read.
fn with_all<'a>(normal: &str, words: &[&'a str]) -> Option<&'a str> {
    let read = parts(normal);
    let has_all = |word: &&&str| {
        let own = parts(word);
        read.iter().all(|part| own.contains(part))
    };
    match words.iter().filter(has_all).collect::<Vec<_>>().as_slice() {
        [only] => Some(only),
        _ => None,
    }
}
