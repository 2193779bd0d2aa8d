//! A trace as a firmware with cupwright hears it: what others must answer to the same.

use crate::family::Family;
use crate::follower::{Follower, Plate, Seen};
use crate::judge::listen;
use crate::line::Sample;
use crate::watched::watched;
use crate::world::World;

/// A trace that was heard.
pub struct Heard {
    pub plate: Plate,
    pub samples: Vec<Sample>,
    /// What was aimed at, g more, and before which sample.
    pub aims: Vec<(usize, f64)>,
}

/// The trace of a family and a seed, its hand stopped by cupwright's cues.
pub fn heard(family: &Family, seed: u64) -> Result<Heard, String> {
    let mut world = World::new(family, seed)?;
    let plate = world.plate();
    let mut heard = Heard { plate, samples: Vec::new(), aims: Vec::new() };
    listen(&mut world, &mut Listener { follower: watched(plate), heard: &mut heard });
    Ok(heard)
}

/// Writes down what it hands on.
struct Listener<'a> {
    follower: Box<dyn Follower>,
    heard: &'a mut Heard,
}

impl Follower for Listener<'_> {
    fn take(&mut self, sample: Sample) -> Seen {
        self.heard.samples.push(sample);
        self.follower.take(sample)
    }

    fn aim(&mut self, grams: f64) {
        self.heard.aims.push((self.heard.samples.len(), grams));
        self.follower.aim(grams);
    }
}
