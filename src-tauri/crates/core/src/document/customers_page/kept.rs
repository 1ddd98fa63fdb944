//! The page as it was proposed, taken down for the proposal and put back from it; and what has changed since.

use super::super::page::{CustomersPage, Image, Shown};
use super::super::picture::Picture;
use super::super::zone_drawing::ZoneDrawing;
use crate::job::{PictureOf, ProposedPage, ProposedPicture};

/// What is kept of a page.
pub(super) fn kept(page: CustomersPage) -> ProposedPage {
    let beside = page.total.map(|total| total.beside).unwrap_or_default();
    let CustomersPage { advice, told, found, how, besides, choices, not_examined, .. } = page;
    let shown = page.shown.into_iter().map(|Shown { image, sentence }| match image {
        Image::Photo(Picture { photo, alt, markups }) => {
            ProposedPicture { sentence, alt, of: PictureOf::Photo { photo, markups } }
        }
        Image::Zones(ZoneDrawing { map, marked, alt }) => {
            ProposedPicture { sentence, alt, of: PictureOf::Zones { map, marked } }
        }
    });
    ProposedPage { advice, told, found, how, besides, shown: shown.collect(), choices, beside, not_examined }
}

/// Puts what was proposed in place of what would be said now. Gives what would be said otherwise now, in sentences.
pub(super) fn put_back(page: &mut CustomersPage, kept: &ProposedPage) -> Vec<String> {
    let ProposedPage { advice, told, found, how, besides, shown, choices, beside, not_examined } = kept.clone();
    let mut since: Vec<String> = Vec::new();
    since.extend((page.advice != advice).then(|| page.advice.clone()));
    since.extend(page.found.iter().filter(|now| !found.contains(now)).cloned());
    page.advice = advice;
    page.told = told;
    page.found = found;
    page.how = how;
    page.besides = besides;
    page.shown = shown.into_iter().map(put_back_picture).collect();
    page.choices = choices;
    page.not_examined = not_examined;
    if let Some(total) = &mut page.total {
        total.beside = beside;
    }
    since
}

fn put_back_picture(ProposedPicture { sentence, alt, of }: ProposedPicture) -> Shown {
    let image = match of {
        PictureOf::Photo { photo, markups } => Image::Photo(Picture { photo, alt, markups }),
        PictureOf::Zones { map, marked } => Image::Zones(ZoneDrawing { map, marked, alt }),
    };
    Shown { image, sentence }
}
