//! Bytes as a source of everything else. When they are used up, all that comes is zero.

use cupwright::quantity::Measure;

pub struct Source<'a>(&'a [u8]);

impl<'a> Source<'a> {
    pub fn new(bytes: &'a [u8]) -> Self {
        Self(bytes)
    }

    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    fn bytes<const N: usize>(&mut self) -> [u8; N] {
        let mut taken = [0; N];
        let (now, later) = self.0.split_at(self.0.len().min(N));
        taken.iter_mut().zip(now).for_each(|(to, from)| *to = *from);
        self.0 = later;
        taken
    }

    pub fn byte(&mut self) -> u8 {
        let [byte] = self.bytes();
        byte
    }

    pub fn word(&mut self) -> u16 {
        u16::from_le_bytes(self.bytes())
    }

    /// Any number there is, or none.
    pub fn any(&mut self) -> f64 {
        f64::from_le_bytes(self.bytes())
    }

    /// One of 65 536 numbers from one to another.
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * (f64::from(self.word()) / f64::from(u16::MAX))
    }

    /// A quantity from anywhere in its range; with a few bits of it near its low end, where most that
    /// is real lies.
    pub fn quantity<M: Measure>(&mut self) -> M {
        let (low, high) = (M::QUANTITY.lowest(), M::QUANTITY.highest());
        let scale = [1.0, 1e-1, 1e-3, 1e-6][usize::from(self.byte() % 4)];
        let number = low + (self.between(low, high) - low) * scale;
        M::new(if M::QUANTITY.is_whole() { number.round() } else { number }).expect("in range")
    }
}
