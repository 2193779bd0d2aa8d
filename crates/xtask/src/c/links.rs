//! Links with firmware that has its own `exp`, `memset` and double arithmetic: nobody takes the other's.
