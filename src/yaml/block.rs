//! A block of keys, read key by key: a key that is unknown or missing is noted like a faulty value, and reading goes on.

use super::fault::Complaint;
use super::field::{Field, FromScalar, MISSING, SENTINEL, Told, UNKNOWN, noted};
use super::nearest::{asked, guesses};
use core::fmt;
use core::marker::PhantomData;
use serde::de::value::{MapAccessDeserializer, SeqAccessDeserializer};
use serde::de::{Error, IgnoredAny, IntoDeserializer, MapAccess, SeqAccess, Visitor};
use serde::{Deserialize, Deserializer};

/// A key that a block may have.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Known {
    /// As it is written.
    pub(crate) key: &'static str,
    /// False where it may be left out.
    pub(crate) must: bool,
    /// What people write for it.
    pub(crate) said: &'static [&'static str],
}

/// Something that stands in for what is missing until its fault is told; it never leaves [`read`](super::read).
pub(crate) trait Blank {
    /// It.
    fn blank() -> Self;
}

impl<T: Default> Blank for Field<T> {
    fn blank() -> Self {
        Self::default()
    }
}

impl<T> Blank for Option<T> {
    fn blank() -> Self {
        None
    }
}

impl<T> Blank for Vec<T> {
    fn blank() -> Self {
        Self::new()
    }
}

/// A block, read into key by key.
pub(crate) trait Block: Blank {
    /// Whether it is the whole file.
    const IS_FILE: bool;
    /// Its keys.
    fn known() -> impl Iterator<Item = Known>;
    /// Reads the value of the key that has this place among them.
    ///
    /// # Errors
    /// Those of the value.
    fn take<'de, A: MapAccess<'de>>(&mut self, index: usize, map: &mut A) -> Result<(), A::Error>;
    /// Whether another of its values stands in for the missing one that has this place.
    fn stands_in(&mut self, _index: usize) -> bool {
        false
    }
}

/// Reads a block.
///
/// # Errors
/// What is no block, and a key that is there twice.
pub(crate) fn block<'de, B: Block, D: Deserializer<'de>>(deserializer: D) -> Result<B, D::Error> {
    deserializer.deserialize_map(OfBlock(PhantomData))
}

struct OfBlock<B>(PhantomData<B>);

impl<'de, B: Block> Visitor<'de> for OfBlock<B> {
    type Value = B;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a block of keys")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<B, A::Error> {
        let mut block = B::blank();
        let mut seen = vec![false; B::known().count()];
        while let Some(KeyOf { index, meant, .. }) = map.next_key::<KeyOf<B>>()? {
            if let Some(index) = index {
                if seen.get(index) == Some(&true) {
                    return Err(A::Error::duplicate_field(B::known().nth(index).map_or("", |known| known.key)));
                }
                block.take(index, &mut map)?;
            } else {
                map.next_value::<IgnoredAny>()?;
            }
            // What an unknown key was meant to be is not told as missing too.
            if let Some(seen) = index.or(meant).and_then(|index| seen.get_mut(index)) {
                *seen = true;
            }
        }
        for (index, (known, _)) in B::known().zip(seen).enumerate().filter(|(_, (known, seen))| known.must && !seen) {
            if block.stands_in(index) {
                continue;
            }
            noted(Some(&Complaint::missing_key(known.key, B::IS_FILE)), MISSING)?;
        }
        Ok(block)
    }
}

/// The value of a field that may be left out, or said to be unknown.
pub(crate) fn told<'de, T: FromScalar, A: MapAccess<'de>>(map: &mut A) -> Result<Option<Field<T>>, A::Error> {
    Ok(map.next_value::<Told<T>>()?.0)
}

/// A list or a block that may be left out, or said to be unknown, which is the same.
pub(crate) fn listed<'de, T: Deserialize<'de>, A: MapAccess<'de>>(map: &mut A) -> Result<Option<T>, A::Error> {
    Ok(map.next_value::<OrUnknown<T>>()?.0)
}

struct OrUnknown<T>(Option<T>);

impl<'de, T: Deserialize<'de>> Deserialize<'de> for OrUnknown<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(OfAny(PhantomData)).map(Self)
    }
}

struct OfAny<T>(PhantomData<T>);

impl<'de, T: Deserialize<'de>> Visitor<'de> for OfAny<T> {
    type Value = Option<T>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a list or a block of keys")
    }
    fn visit_unit<E: Error>(self) -> Result<Self::Value, E> {
        Ok(None)
    }
    fn visit_str<E: Error>(self, text: &str) -> Result<Self::Value, E> {
        if text == UNKNOWN { Ok(None) } else { T::deserialize(text.into_deserializer()).map(Some) }
    }
    fn visit_bool<E: Error>(self, read: bool) -> Result<Self::Value, E> {
        T::deserialize(read.into_deserializer()).map(Some)
    }
    fn visit_i64<E: Error>(self, read: i64) -> Result<Self::Value, E> {
        T::deserialize(read.into_deserializer()).map(Some)
    }
    fn visit_u64<E: Error>(self, read: u64) -> Result<Self::Value, E> {
        T::deserialize(read.into_deserializer()).map(Some)
    }
    fn visit_f64<E: Error>(self, read: f64) -> Result<Self::Value, E> {
        T::deserialize(read.into_deserializer()).map(Some)
    }
    fn visit_seq<A: SeqAccess<'de>>(self, list: A) -> Result<Self::Value, A::Error> {
        T::deserialize(SeqAccessDeserializer::new(list)).map(Some)
    }
    fn visit_map<A: MapAccess<'de>>(self, block: A) -> Result<Self::Value, A::Error> {
        T::deserialize(MapAccessDeserializer::new(block)).map(Some)
    }
}

/// A key of a block: its place among those known, or of the one that it was probably meant to be.
struct KeyOf<B> {
    index: Option<usize>,
    meant: Option<usize>,
    of: PhantomData<B>,
}

impl<'de, B: Block> Deserialize<'de> for KeyOf<B> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_str(OfKey(PhantomData))
    }
}

struct OfKey<B>(PhantomData<B>);

impl<B: Block> Visitor<'_> for OfKey<B> {
    type Value = KeyOf<B>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a key")
    }

    fn visit_str<E: Error>(self, read: &str) -> Result<KeyOf<B>, E> {
        let place = |key: &str| B::known().position(|known| known.key == key);
        let mut found = KeyOf { index: place(read), meant: None, of: PhantomData };
        if found.index.is_none() {
            let known: Vec<Known> = B::known().collect();
            let said = |known: &Known| known.said.iter().map(|said| (*said, [known.key])).collect::<Vec<_>>();
            let said: Vec<(&str, [&str; 1])> = known.iter().flat_map(said).collect();
            let said: Vec<(&str, &[&str])> = said.iter().map(|(said, key)| (*said, key.as_slice())).collect();
            let keys: Vec<&str> = known.iter().map(|known| known.key).collect();
            let guesses = guesses(read, &keys, &said);
            found.meant = guesses.first().copied().and_then(place);
            noted(Some(&Complaint::unknown_key(read, &asked(&guesses), &keys)), SENTINEL)?;
        }
        Ok(found)
    }
}
