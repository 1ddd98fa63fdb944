//! Boxes side by side on a sheet: bands from top to bottom, in each band columns, in each column boxes.

use super::Point;

/// A sheet on which boxes are put down one after another.
#[derive(Debug, Clone, Default)]
pub(crate) struct Packing {
    /// Width and height of the sheet.
    pub(crate) room: (f64, f64),
    /// Where the lowest box ends.
    pub(crate) bottom: f64,
    gap: f64,
    band_top: f64,
    /// Where the next box of the column would begin.
    column: Point,
    column_right: f64,
}

impl Packing {
    /// An empty sheet, and the distance to keep between boxes.
    pub(crate) fn new(room: (f64, f64), gap: f64) -> Self {
        Self { room, gap, ..Self::default() }
    }

    /// Finds the place of a box; none when the sheet is full. An empty sheet takes a box of any size.
    ///
    /// Below the box before, unless that was the first of its band (the crankshaft, which keeps its side to itself);
    /// else beside it; else in a new band across the sheet.
    pub(crate) fn place(&mut self, (width, height): (f64, f64)) -> Option<Point> {
        let fits = |(left, top): Point| left + width <= self.room.0 && top + height <= self.room.1;
        let below = self.column;
        let beside = (self.column_right + self.gap, self.band_top);
        let new_band = (0.0, self.bottom + self.gap);
        let at = if self.bottom == 0.0 {
            (0.0, 0.0)
        } else if below.0 > 0.0 && fits(below) {
            below
        } else if fits(beside) {
            beside
        } else if fits(new_band) {
            self.band_top = new_band.1;
            new_band
        } else {
            return None;
        };
        let right = at.0 + width;
        self.column_right = if at == below { self.column_right.max(right) } else { right };
        self.column = (at.0, at.1 + height + self.gap);
        self.bottom = self.bottom.max(at.1 + height);
        Some(at)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(boxes: &[(f64, f64)], expected: &[Option<Point>]) {
        let mut packing = Packing::new((100.0, 100.0), 1.0);
        let placed: Vec<Option<Point>> = boxes.iter().map(|size| packing.place(*size)).collect();
        assert_eq!(placed, expected);
    }

    #[test]
    fn boxes_stand_beside_then_below_then_across() {
        check(&[(60.0, 60.0), (30.0, 20.0), (30.0, 20.0)], &[Some((0.0, 0.0)), Some((61.0, 0.0)), Some((61.0, 21.0))]);
        check(&[(60.0, 60.0), (90.0, 20.0)], &[Some((0.0, 0.0)), Some((0.0, 61.0))]);
        check(&[(60.0, 60.0), (90.0, 50.0)], &[Some((0.0, 0.0)), None]);
        check(&[(300.0, 300.0), (1.0, 1.0)], &[Some((0.0, 0.0)), None]);
    }
}
