//! What one's own brews tell.

mod curve;
mod line;
mod quality;

#[cfg(test)]
#[allow(clippy::indexing_slicing, clippy::arithmetic_side_effects)]
mod certified;
