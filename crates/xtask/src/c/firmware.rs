//! The scale's firmware of `examples/scale-firmware`, built and run on emulated microcontrollers.
