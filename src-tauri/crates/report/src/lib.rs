//! Document content in, PDF, plain text and CSV out. The only crate with Typst.
//!
//! ```text
//! Paper ──▶ content (cleaned text as JSON, checked pictures, drawings as SVG) ──▶ template/blocks.typ ──▶ PDF
//! Paper ──▶ plain text
//! Labels ─▶ template/labels.typ ──▶ PDF
//! rows  ──▶ CSV
//! ```
//!
//! Whatever a person typed reaches the typesetter as data, never as markup, and the typesetter sees no file, no
//! network, no clock: the same paper gives the same bytes. Only for letters that no embedded font has are fonts of the
//! system read; then the bytes are the same on the same system.

#![warn(missing_docs)]

mod clean;
mod content;
mod csv;
mod direction;
mod drawing;
mod fonts;
mod html;
mod labels;
mod mail;
#[cfg(test)]
mod on_the_sheet;
mod page_text;
mod pdf;
mod picture;
mod png;
mod symbol;
mod text;
mod unbroken;
mod world;

pub use csv::csv;
pub use html::html;
pub use labels::labels;
pub use pdf::{NotSet, Print, Resolution, Source, pdf};
pub use png::png;
pub use symbol::{MODULE_MM, QUIET_ZONE, Symbol};
pub use text::text;
