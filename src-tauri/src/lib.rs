//! shell
