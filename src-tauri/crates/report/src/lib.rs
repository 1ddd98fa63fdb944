//! Document content in, PDF and plain text out. The only crate with Typst.
//!
//! ```text
//! Paper ──▶ content (cleaned text as JSON, checked pictures, drawings as SVG) ──▶ template.typ ──▶ PDF
//! Paper ──▶ plain text
//! ```
//!
//! Whatever a person typed reaches the typesetter as data, never as markup, and the typesetter sees no file, no
//! network, no clock: the same paper gives the same bytes.

#![warn(missing_docs)]

mod clean;
mod content;
mod drawing;
mod pdf;
mod picture;
mod text;
mod world;

pub use pdf::{ReportError, Sheet, pdf, pdf_on};
pub use text::text;
