//! What a cause makes of one symptom on one part, as it is told by those who look.

use super::catalogue::Presence;
use super::network::GradeChances;
use super::pattern::Pattern;
use crate::wear::ZoneMap;

/// What a cause makes of a symptom: by one sign, or under one name by several that look alike.
#[derive(Debug, Clone)]
pub struct Made<'a> {
    /// The chances of grade 1, 2, 3, 4.
    grades: [f64; 4],
    /// The sign that makes most of it, with its share beside the others.
    first: (Presence<'a>, f64),
    others: Vec<(Presence<'a>, f64)>,
}

impl<'a> Made<'a> {
    /// By measuring, which calls nothing by another name.
    pub(super) fn measured(by: Presence<'a>) -> Self {
        Self { grades: by.grades(), first: (by, by.chance), others: vec![] }
    }

    /// By a sign that is told with these chances of grades.
    pub(super) fn seen(by: Presence<'a>, grades: [f64; 4]) -> Self {
        Self { grades, first: (by, grades.iter().sum()), others: vec![] }
    }

    /// The same, or by one more sign: of two that are told under one name the worse counts.
    pub(super) fn or(mut self, by: Presence<'a>, grades: [f64; 4]) -> Self {
        let (own, other) = (GradeChances::of(self.grades), GradeChances::of(grades));
        let at_most = |grade: u8| own.at_most(grade) * other.at_most(grade);
        self.grades = [1, 2, 3, 4].map(|grade| at_most(grade) - at_most(grade - 1));
        let weight = grades.iter().sum();
        let (next, of_next) =
            if weight > self.first.1 { std::mem::replace(&mut self.first, (by, weight)) } else { (by, weight) };
        self.others.push((next, of_next));
        self
    }

    /// With which chance it makes which grade.
    pub fn grades(&self) -> GradeChances {
        GradeChances::of(self.grades)
    }

    /// The chance that what it makes shows this pattern, 0 to 1; over all patterns of a drawing they sum to 1.
    pub fn share(&self, map: ZoneMap, pattern: Pattern) -> f64 {
        let all = || std::iter::once(&self.first).chain(&self.others);
        let weights: f64 = all().map(|(_, weight)| weight).sum();
        all().map(|(by, weight)| by.share(map, pattern) * weight).sum::<f64>() / weights
    }

    /// The pattern that it shows most often, if any is named.
    pub fn usual_pattern(&self, map: ZoneMap) -> Option<Pattern> {
        self.first.0.usual_pattern(map)
    }
}
