//! Inputs by chance, of a seed.

/// SplitMix64 (Steele, Lea & Flood 2014).
pub struct Chance(u64);

impl Chance {
    pub fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0xd134_2543_de82_ef95))
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// So many bytes.
    pub fn bytes(&mut self, count: u64) -> Vec<u8> {
        (0..count).map(|_| self.next() as u8).collect()
    }

    /// Up to a kilobyte.
    pub fn input(&mut self) -> Vec<u8> {
        let count = self.next() % 1024;
        self.bytes(count)
    }
}
