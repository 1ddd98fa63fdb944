//! Pictures of all kinds, whole and broken, from other people's collections. They lie beside the checkout and not in
//! it; see the README there. Without them these tests say so and pass.

#![allow(clippy::unwrap_used, reason = "a test that fails is meant to panic")]

use std::fs;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

use image::RgbImage;
use wearbook_photo::develop;

/// No input may take longer.
const LONGEST: Duration = Duration::from_secs(10);

#[test]
fn odd_images() {
    check_collection("odd-images", ODD_IMAGES);
}

#[test]
fn jpeg_variants() {
    check_collection("jpeg-variants", JPEG_VARIANTS);
}

/// The nine pictures of each shape show the same thing, stored in nine ways; the one with orientation 1 is stored
/// upright.
#[test]
fn every_orientation_comes_out_upright() {
    let Some(folder) = collection("exif-orientation") else { return };
    for shape in ["Landscape", "Portrait"] {
        let shown = |orientation: u32| {
            let bytes = fs::read(folder.join(format!("{shape}_{orientation}.jpg"))).unwrap();
            image::load_from_memory(&develop(&bytes).unwrap().screen).unwrap().into_rgb8()
        };
        let upright = shown(1);
        assert_eq!(upright.width() > upright.height(), shape == "Landscape");
        for orientation in (0..=8).filter(|orientation| *orientation != 1) {
            let difference = mean_difference(&shown(orientation), &upright);
            // Each picture has its number written on it, which alone makes them differ by up to 3.3.
            assert!(difference < 5.0, "{shape}_{orientation} differs by {difference:.2} of 255");
        }
        let turned = image::imageops::flip_horizontal(&upright);
        assert!(mean_difference(&turned, &upright) > 20.0, "a wrong turn would not be noticed");
    }
}

/// The mean difference of two pictures over all samples, 0 to 255.
fn mean_difference(a: &RgbImage, b: &RgbImage) -> f64 {
    assert_eq!(a.dimensions(), b.dimensions());
    let sum: u64 = a.as_raw().iter().zip(b.as_raw()).map(|(a, b)| u64::from(a.abs_diff(*b))).sum();
    sum as f64 / a.as_raw().len() as f64
}

/// Develops every file of a collection and compares what became of it with the table.
fn check_collection(name: &str, expected: &[(&str, &str)]) {
    let Some(folder) = collection(name) else { return };
    let found: Vec<(String, String)> = files(&folder).iter().map(|path| outcome(&folder, path)).collect();
    let found: Vec<(&str, &str)> = found.iter().map(|(name, outcome)| (name.as_str(), outcome.as_str())).collect();
    for (found, expected) in found.iter().zip(expected) {
        assert_eq!(found, expected);
    }
    assert_eq!(found.len(), expected.len(), "the collection has other files than the table");
}

/// A folder of the collections, or `None` after saying that it is not there.
fn collection(name: &str) -> Option<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../../shared/data").join(name);
    if folder.is_dir() {
        return Some(folder);
    }
    println!("skipped: no test pictures at ../shared/data/{name}");
    None
}

/// Every file below a folder, sorted by path, without the notes about the collection itself.
fn files(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let name = path.file_name().unwrap().to_string_lossy().into_owned();
        if path.is_dir() {
            found.extend(files(&path));
        } else if !name.starts_with("LICENSE") && name != "SOURCE.txt" {
            found.push(path);
        }
    }
    found.sort();
    found
}

/// What became of a file: its size as shown, or the code with which it was refused.
fn outcome(folder: &Path, path: &Path) -> (String, String) {
    let name = path.strip_prefix(folder).unwrap().to_string_lossy().into_owned();
    let bytes = fs::read(path).unwrap();
    let start = Instant::now();
    let outcome = match develop(&bytes) {
        Ok(developed) => format!("{} × {}", developed.facts.width, developed.facts.height),
        Err(refusal) => {
            let sentence = refusal.message().starts_with("This ") && refusal.message().ends_with('.');
            assert!(sentence, "{name} is refused with no sentence: {refusal}");
            refusal.code().to_owned()
        }
    };
    assert!(start.elapsed() < LONGEST, "{name} took {:?}", start.elapsed());
    (name, outcome)
}

/// File and outcome. Refused for a reason of their own:
/// `hopper_bad_exif.jpg` has compressed data that were changed on the way and decode to stripes.
#[rustfmt::skip]
const ODD_IMAGES: &[(&str, &str)] = &[
    ("12bit.cropped.tif", "photo-tiff"),
    ("16bit.cropped.tif", "photo-tiff"),
    ("app13-multiple.jpg", "256 × 160"),
    ("app13.jpg", "4 × 4"),
    ("avif/exif.avif", "photo-avif"),
    ("avif/hopper.avif", "photo-avif"),
    ("avif/hopper.heif", "photo-heic"),
    ("avif/icc_profile.avif", "photo-avif"),
    ("avif/rot0mir0.avif", "photo-avif"),
    ("avif/rot0mir1.avif", "photo-avif"),
    ("avif/rot1mir0.avif", "photo-avif"),
    ("avif/rot1mir1.avif", "photo-avif"),
    ("avif/rot2mir0.avif", "photo-avif"),
    ("avif/rot2mir1.avif", "photo-avif"),
    ("avif/rot3mir0.avif", "photo-avif"),
    ("avif/rot3mir1.avif", "photo-avif"),
    ("avif/xmp_tags_orientation.avif", "photo-avif"),
    ("bmp/b/badbitcount.bmp", "photo-bmp"),
    ("bmp/b/badbitssize.bmp", "photo-bmp"),
    ("bmp/b/baddens1.bmp", "photo-bmp"),
    ("bmp/b/baddens2.bmp", "photo-bmp"),
    ("bmp/b/badfilesize.bmp", "photo-bmp"),
    ("bmp/b/badheadersize.bmp", "photo-bmp"),
    ("bmp/b/badpalettesize.bmp", "photo-bmp"),
    ("bmp/b/badplanes.bmp", "photo-bmp"),
    ("bmp/b/badrle.bmp", "photo-bmp"),
    ("bmp/b/badwidth.bmp", "photo-bmp"),
    ("bmp/b/pal8badindex.bmp", "photo-bmp"),
    ("bmp/b/reallybig.bmp", "photo-bmp"),
    ("bmp/b/rletopdown.bmp", "photo-bmp"),
    ("bmp/b/shortfile.bmp", "photo-bmp"),
    ("broken_data_stream.png", "photo-broken"),
    ("broken_exif_dpi.jpg", "100 × 100"),
    ("crash-4fb027452e6988530aa5dabee76eecacb3b79f8a.j2k", "photo-jpeg-2000"),
    ("crash-7d4c83eb92150fb8f1653a697703ae06ae7c4998.j2k", "photo-jpeg-2000"),
    ("crash-ccca68ff40171fdae983d924e127a721cab2bd50.j2k", "photo-jpeg-2000"),
    ("crash-d2c93af851d3ab9a19e34503626368b2ecde9c03.j2k", "photo-jpeg-2000"),
    ("decompression_bomb.gif", "photo-gif"),
    ("decompression_bomb.ico", "photo-unknown-format"),
    ("decompression_bomb_extents.gif", "photo-gif"),
    ("empty_gps_ifd.jpg", "10 × 10"),
    ("exif-200dpcm.jpg", "200 × 200"),
    ("exif-72dpi-int.jpg", "500 × 450"),
    ("exif-dpi-zerodivision.jpg", "200 × 200"),
    ("exif-ifd-offset.jpg", "200 × 200"),
    ("exif.png", "512 × 512"),
    ("exif_gps.jpg", "8 × 8"),
    ("exif_gps_typeerror.jpg", "800 × 531"),
    ("exif_imagemagick.png", "512 × 512"),
    ("exif_imagemagick_orientation.png", "512 × 512"),
    ("exif_text.png", "512 × 512"),
    ("exif_typeerror.jpg", "800 × 531"),
    ("flower.jpg", "480 × 360"),
    ("flower2.jpg", "300 × 225"),
    ("frame_size.mpo", "56 × 70"),
    ("g4_orientation_1.tif", "photo-tiff"),
    ("g4_orientation_2.tif", "photo-tiff"),
    ("g4_orientation_3.tif", "photo-tiff"),
    ("g4_orientation_4.tif", "photo-tiff"),
    ("g4_orientation_5.tif", "photo-tiff"),
    ("g4_orientation_6.tif", "photo-tiff"),
    ("g4_orientation_7.tif", "photo-tiff"),
    ("g4_orientation_8.tif", "photo-tiff"),
    ("hopper.bmp", "photo-bmp"),
    ("hopper.gif", "photo-gif"),
    ("hopper.jpg", "128 × 128"),
    ("hopper.png", "128 × 128"),
    ("hopper.ppm", "photo-unknown-format"),
    ("hopper.tif", "photo-tiff"),
    ("hopper.webp", "128 × 128"),
    ("hopper_16bit_qtables.jpg", "128 × 128"),
    ("hopper_bad_exif.jpg", "photo-broken"),
    ("hopper_gray.jpg", "128 × 128"),
    ("hopper_orientation_2.jpg", "128 × 128"),
    ("hopper_orientation_2.webp", "128 × 128"),
    ("hopper_orientation_3.jpg", "128 × 128"),
    ("hopper_orientation_3.webp", "128 × 128"),
    ("hopper_orientation_4.jpg", "128 × 128"),
    ("hopper_orientation_4.webp", "128 × 128"),
    ("hopper_orientation_5.jpg", "128 × 128"),
    ("hopper_orientation_5.webp", "128 × 128"),
    ("hopper_orientation_6.jpg", "128 × 128"),
    ("hopper_orientation_6.webp", "128 × 128"),
    ("hopper_orientation_7.jpg", "128 × 128"),
    ("hopper_orientation_7.webp", "128 × 128"),
    ("hopper_orientation_8.jpg", "128 × 128"),
    ("hopper_orientation_8.webp", "128 × 128"),
    ("icc-after-SOF.jpg", "10 × 10"),
    ("icc_profile_big.jpg", "425 × 250"),
    ("ignore_frame_size.mpo", "64 × 64"),
    ("invalid-exif-without-x-resolution.jpg", "300 × 200"),
    ("invalid-exif.jpg", "200 × 200"),
    ("iptc.jpg", "640 × 480"),
    ("iptc_roundUp.jpg", "640 × 480"),
    ("jfif_unit_cm.jpg", "1 × 1"),
    ("jpeg_ff00_header.jpg", "300 × 225"),
    ("junk_jpeg_header.jpg", "1024 × 768"),
    ("linear_gradient.png", "256 × 256"),
    ("multiple_exif.jpg", "1 × 1"),
    ("no-dpi-in-exif.jpg", "200 × 200"),
    ("oom-225817ca0f8c663be7ab4b9e717b02c661e66834.tif", "photo-tiff"),
    ("orientation_rectangle.jpg", "1 × 2"),
    ("photoshop-200dpi-broken.jpg", "200 × 200"),
    ("photoshop-200dpi.jpg", "200 × 200"),
    ("pil_sample_cmyk.jpg", "100 × 100"),
    ("pil_sample_rgb.jpg", "100 × 100"),
    ("rgb.jpg", "100 × 100"),
    ("sugarshack.mpo", "640 × 480"),
    ("sugarshack_bad_mpo_header.jpg", "640 × 480"),
    ("text_float_coord.png", "300 × 64"),
    ("text_float_coord_1_alt.png", "300 × 64"),
    ("timeout-6646305047838720", "photo-tiff"),
    ("total-pages-zero.tif", "photo-tiff"),
    ("transparent.png", "200 × 150"),
    ("transparent_background_text.png", "300 × 100"),
    ("transparent_background_text_L.png", "300 × 100"),
    ("truncated_app14.jpg", "100 × 100"),
    ("truncated_end_chunk.png", "128 × 128"),
    ("truncated_exif_dpi.jpg", "480 × 640"),
    ("truncated_image.png", "photo-incomplete"),
    ("truncated_jpeg.jpg", "photo-incomplete"),
    ("xmp_no_prefix.jpg", "1 × 1"),
    ("xmp_padded.jpg", "1 × 1"),
    ("xmp_tags_orientation.png", "326 × 268"),
    ("xmp_tags_orientation_exiftool.png", "10 × 10"),
    ("xmp_test.jpg", "2000 × 1072"),
    ("zero_dpi.jp2", "photo-jpeg-2000"),
    ("zero_height.j2k", "photo-jpeg-2000"),
    ("zero_width.gif", "photo-gif"),
];

/// File and outcome.
#[rustfmt::skip]
const JPEG_VARIANTS: &[(&str, &str)] = &[
    ("monkey12.jpg", "photo-deep-jpeg"),
    ("monkey16.pgm", "photo-unknown-format"),
    ("monkey16.png", "149 × 227"),
    ("shira_bird8.bmp", "photo-bmp"),
    ("test.scan", "photo-unknown-format"),
    ("test1.icc", "photo-unknown-format"),
    ("test3.icc", "photo-unknown-format"),
    ("testimgari.jpg", "photo-rare-jpeg"),
    ("testimgint.jpg", "227 × 149"),
    ("testorig.jpg", "227 × 149"),
    ("testorig.png", "227 × 149"),
    ("testorig.ppm", "photo-unknown-format"),
    ("vgl_5674_0098.png", "120 × 96"),
    ("vgl_6434_0018a.bmp", "photo-bmp"),
    ("vgl_6548_0026a.bmp", "photo-bmp"),
];
