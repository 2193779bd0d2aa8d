//! From a value that is not quite sure to a decision.
