//! What rules rest on, each work named once and called by its number: behind a reason its source would hide the reason.

/// The published works that were called so far, in the order of their numbers.
#[derive(Debug, Default)]
pub(super) struct RestsOn(Vec<String>);

impl RestsOn {
    /// The numbers of what a source names, as they stand behind a reason; empty where it is common practice alone.
    pub(super) fn numbers<'a>(&mut self, sources: impl IntoIterator<Item = &'a str>) -> String {
        let mut numbers: Vec<usize> = sources.into_iter().flat_map(works).map(|work| self.number(work)).collect();
        numbers.sort_unstable();
        numbers.dedup();
        let shown: Vec<String> = numbers.iter().map(usize::to_string).collect();
        if shown.is_empty() { String::new() } else { format!(" [{}]", shown.join(", ")) }
    }

    fn number(&mut self, work: String) -> usize {
        let known = self.0.iter().position(|known| *known == work);
        known.unwrap_or_else(|| {
            self.0.push(work);
            self.0.len() - 1
        }) + 1
    }

    /// All of them by their numbers.
    pub(super) fn told(&self) -> String {
        let works = self.0.iter().zip(1..).map(|(work, number)| format!("[{number}] {work}"));
        works.chain(["without a number: common practice.".to_owned()]).collect::<Vec<_>>().join("; ")
    }
}

/// The works of a source, without their pages, which the list of all rules has. What stands in brackets is the rule once more;
/// limits are the engine's own.
fn works(source: &str) -> Vec<String> {
    let named = without_brackets(source).replace(" and TM ", "; TM ").replace(", TM ", "; TM ");
    let told = named.trim_end_matches('.').split("; ").flat_map(sentences).map(str::trim);
    let is_ours = |told: &str| told.to_lowercase().ends_with("common practice") || told.starts_with("limits:");
    told.filter(|told| !told.is_empty() && !is_ours(told)).map(|told| work(told).to_owned()).collect()
}

/// How places in a work begin.
const PLACES: [&str; 5] = [" p.", " para ", " WP ", " App.", " table "];

/// The name of a work alone.
fn work(text: &str) -> &str {
    let named = text.rsplit_once(": ").map_or(text, |(_, named)| named);
    let end = PLACES.iter().filter_map(|place| named.find(place)).min().unwrap_or(named.len());
    named.get(..end).unwrap_or(named).trim().trim_end_matches([',', '.'])
}

/// A sentence behind a work is a remark of its own; the dot of "p. 4-50" and "App. F" ends none.
fn sentences(text: &str) -> [&str; 2] {
    let ends = |(at, dot): &(usize, &str)| {
        let is_short = text.get(..*at).is_some_and(|before| before.ends_with(" p") || before.ends_with("App"));
        !is_short && text.get(at + dot.len()..).is_some_and(|rest| rest.starts_with(char::is_uppercase))
    };
    let end = text.match_indices(". ").find(ends);
    end.and_then(|(at, dot)| Some([text.get(..at)?, text.get(at + dot.len()..)?])).unwrap_or([text, ""])
}

fn without_brackets(text: &str) -> String {
    let mut depth = 0_usize;
    let mut kept = String::new();
    for letter in text.chars() {
        match letter {
            '(' => {
                depth += 1;
                kept.truncate(kept.trim_end().len());
            }
            ')' => depth = depth.saturating_sub(1),
            letter if depth == 0 => kept.push(letter),
            _ => {}
        }
    }
    kept
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::decide::rules;

    #[test]
    fn a_work_has_one_number_and_common_practice_none() {
        let mut rests_on = RestsOn::default();
        let mut numbers = |source| rests_on.numbers([source]);
        assert_eq!(numbers("TM 1 p. 4-50 (grind all; or none); TM 2; limits: the spec sheet."), " [1, 2]");
        assert_eq!(numbers("Common practice (resize); TM 2 WP 0041 (rod and cap)."), " [2]");
        assert_eq!(numbers("TM 3, para 6-45, and TM 1; fingernail test: common practice."), " [1, 3]");
        assert_eq!(numbers("Common practice; matched parts stay matched: TM 3 (pushrod), TM 2."), " [2, 3]");
        assert_eq!(numbers("Common practice."), "");
        assert_eq!(numbers("TM 3; TM 4 App. F. That two stands for five is our judgement."), " [3, 4, 5]");
        assert_eq!(
            rests_on.told(),
            "[1] TM 1; [2] TM 2; [3] TM 3; [4] TM 4; [5] That two stands for five is our judgement; without a number: \
             common practice."
        );
    }

    #[test]
    fn every_rule_names_a_work_or_common_practice() {
        for rule in rules::ALL {
            let works = works(rule.source);
            let is_short = works.iter().all(|work| work.chars().count() <= 90 && !work.contains(['(', ')']));
            assert!(is_short, "{}: {works:?}", rule.id.as_str());
            assert!(
                !works.is_empty() || rule.source.to_lowercase().contains("common practice"),
                "{}",
                rule.id.as_str()
            );
        }
    }
}
