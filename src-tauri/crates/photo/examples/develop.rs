//! Develops one photo: `develop IN OUT_DIR` writes `screen.jpg` and `thumb.jpg`. For timing; prints nothing.

use std::error::Error;
use std::path::Path;

fn main() -> Result<(), Box<dyn Error>> {
    let mut arguments = std::env::args().skip(1);
    let (Some(photo), Some(folder)) = (arguments.next(), arguments.next()) else {
        return Err("Use: develop IN OUT_DIR".into());
    };
    let developed = wearbook_photo::develop(&std::fs::read(photo)?)?;
    std::fs::write(Path::new(&folder).join("screen.jpg"), developed.screen)?;
    std::fs::write(Path::new(&folder).join("thumb.jpg"), developed.thumb)?;
    Ok(())
}
