//! Sums and taxes against Python's decimal module, with the version of Python told.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test may stop at once")]

use std::process::Command;

use wearbook_core::money::{Money, Tax, TaxRounding};

const SCRIPT: &str = r#"
import json, sys
from decimal import Decimal, ROUND_HALF_UP
cases = json.load(sys.stdin)
def rounded(x): return int(x.quantize(Decimal(1), rounding=ROUND_HALF_UP))
out = []
for case in cases:
    rate = Decimal(case["rate"]) / 10000
    lines = [Decimal(n) for n in case["lines"]]
    out.append([rounded(sum(lines) * rate), sum(rounded(n * rate) for n in lines)])
json.dump({"version": sys.version.split()[0], "taxes": out}, sys.stdout)
"#;

/// A small generator, so that every run checks the same bills.
fn bills() -> Vec<(u32, Vec<i64>)> {
    let mut state = 20_301_u64;
    let mut next = move |below: u64| {
        state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (state >> 33) % below
    };
    (0..300)
        .map(|_| {
            let rate = u32::try_from(next(3_000)).unwrap();
            let lines = (0..1 + next(40)).map(|_| i64::try_from(next(2_000_000)).unwrap()).collect();
            (rate, lines)
        })
        .collect()
}

#[test]
fn taxes_equal_those_of_pythons_decimal_module() {
    let bills = bills();
    let cases: Vec<_> = bills.iter().map(|(rate, lines)| serde_json::json!({ "rate": rate, "lines": lines })).collect();
    let mut python = match Command::new("python3")
        .args(["-c", SCRIPT])
        .stdin(std::process::Stdio::piped())
        .stdout(std::process::Stdio::piped())
        .spawn()
    {
        Ok(python) => python,
        Err(error) => {
            println!("skipped: python3 does not run here ({error})");
            return;
        }
    };
    let text = serde_json::to_vec(&cases).unwrap();
    std::io::Write::write_all(&mut python.stdin.take().unwrap(), &text).unwrap();
    let output = python.wait_with_output().unwrap();
    assert!(output.status.success(), "the script stopped");
    let answer: serde_json::Value = serde_json::from_slice(&output.stdout).unwrap();
    println!("Python {}", answer.get("version").and_then(|version| version.as_str()).unwrap_or("?"));
    let expected = answer.get("taxes").and_then(|taxes| taxes.as_array()).unwrap();
    assert_eq!(expected.len(), bills.len());
    for ((rate, lines), expected) in bills.iter().zip(expected) {
        let lines: Vec<Money> = lines.iter().copied().map(Money::from_minor).collect();
        let ours =
            [TaxRounding::Total, TaxRounding::Line].map(|rounding| Tax { rate: *rate, rounding }.on(&lines).minor());
        assert_eq!(serde_json::json!(ours), *expected, "{rate} on {lines:?}");
    }
}
