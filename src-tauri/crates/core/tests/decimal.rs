//! Bills against Python's decimal module: every line, the sums and the tax, to the minor unit. `python3`, or what
//! `WEARBOOK_PYTHON` names, works them out from the shop's prices alone.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at once")]

use std::collections::BTreeMap;
use std::process::{Command, Stdio};

use serde_json::{Value, json};
use wearbook_core::assess::{Assessment, assess_given};
use wearbook_core::cause::diagnose;
use wearbook_core::engine::{Arrangement, Engine, Part};
use wearbook_core::job::{Change, DeviceId, EditId, Job};
use wearbook_core::money::{Applies, PriceKey, QuoteLine, Standing};
use wearbook_core::wear::Grade;
use wearbook_core::work::{Hands, Work};

/// Halves away from zero. What a line costs: parts and machining by the piece, time rounded once; then what stands on
/// every bill, its share one of all lines above it; then tax on the total or line by line.
const SCRIPT: &str = r#"
import json, sys
from decimal import Decimal, ROUND_HALF_UP
def rounded(x): return x.quantize(Decimal(1), rounding=ROUND_HALF_UP)
def priced(line, hour):
    if "each" in line: return Decimal(line["each"]) * line["quantity"]
    pieces = Decimal(line["part"] + line["machining"]) * line["quantity"]
    return pieces + rounded(Decimal(hour) * line["minutes"] * line["quantity"] / 60)
def stands(line, hour, found):
    share = rounded(found * Decimal(line["share"]) / Decimal(10000))
    return Decimal(line["amount"]) + rounded(Decimal(hour) * line["minutes"] / 60) + share
def bill(case):
    nets = [None if line is None else priced(line, case["hour"]) for line in case["lines"]]
    found = sum((net for net in nets if net is not None), Decimal(0))
    nets += [stands(line, case["hour"], found) for line in case["standing"]]
    known, rate = [net for net in nets if net is not None], Decimal(case["rate"]) / 10000
    net = sum(known, Decimal(0))
    tax = sum((rounded(n * rate) for n in known), Decimal(0)) if case["by_line"] else rounded(net * rate)
    whole = lambda n: None if n is None else int(n)
    return {"nets": [whole(n) for n in nets], "net": int(net), "tax": int(tax), "gross": int(net + tax)}
json.dump({"version": sys.version.split()[0], "bills": [bill(case) for case in json.load(sys.stdin)]}, sys.stdout)
"#;

/// A small generator, so that every run checks the same bills.
struct Dice(u64);

impl Dice {
    fn below(&mut self, bound: u64) -> i64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        i64::try_from((self.0 >> 33) % bound).unwrap()
    }

    fn is_so(&mut self, one_in: u64) -> bool {
        self.below(one_in) == 0
    }

    fn one_of<T: Copy>(&mut self, all: &[T]) -> T {
        all[usize::try_from(self.below(all.len() as u64)).unwrap()]
    }
}

/// What the answers are to: what Python is given, and what we make of the same.
struct Bill {
    asked: Value,
    ours: Value,
}

/// A worn engine with prices for most of its lines, items of the shop's own and standing lines.
fn bill(dice: &mut Dice) -> Bill {
    let mut bench = Bench::default();
    let arrangement = Arrangement::inline(4);
    let engine = Engine::new(arrangement.clone()).unwrap();
    bench.does(json!({ "do": "arrange", "arrangement": arrangement }));
    for _ in 0..dice.below(12) {
        let part: Part = dice.one_of(engine.parts());
        let (tag, grade) = (dice.one_of(part.kind.row().tags), dice.one_of(&Grade::ALL));
        bench.does(json!({ "do": "tag", "part": part, "tag": tag, "grade": grade }));
    }
    let mut own = vec![];
    for _ in 0..dice.below(4) {
        let (quantity, price) = (1 + dice.below(9), (!dice.is_so(4)).then(|| dice.below(90_000)));
        let item = json!({ "list": "order", "what": "Hose", "quantity": quantity, "because": "", "price": price });
        bench.does(json!({ "do": "add-item", "item": item }));
        own.push(price.map(|each| json!({ "each": each, "quantity": quantity })));
    }
    let prices: Vec<Option<Value>> = bench.worked().iter().map(|line| price(line.of, dice)).collect();
    let standing: Vec<Value> = Standing::ALL.into_iter().filter_map(|of| standing(of, dice)).collect();
    let (hour, rate, by_line) = (dice.below(20_000), dice.below(3_000), dice.is_so(2));
    bench.does(json!({ "do": "use-prices", "prices": {
        "currency": "EUR",
        "hour": hour,
        "tax": { "rate": rate, "rounding": if by_line { "line" } else { "total" } },
        "prices": prices.iter().flatten().collect::<Vec<_>>(),
        "standing": standing,
    } }));
    let worked = bench.worked();
    let goes = worked.iter().any(|line| line.hands == Some(Hands::MachineShop));
    let priced = worked.iter().zip(prices).map(|(line, price)| {
        let mut price = price?;
        // Work that is done here has no machining; a new part has its price whoever fits it.
        if line.hands == Some(Hands::Here) && line.of.work != Work::Replace {
            price["machining"] = 0.into();
        }
        price["quantity"] = line.quantity.into();
        Some(price)
    });
    let stands = standing.iter().filter(|line| goes || line["applies"] == "always");
    let quote = bench.assessment().quote;
    Bill {
        asked: json!({
            "hour": hour,
            "rate": rate,
            "by_line": by_line,
            "lines": priced.chain(own).collect::<Vec<_>>(),
            "standing": stands.collect::<Vec<_>>(),
        }),
        ours: json!({
            "nets": quote.lines.iter().map(|line| line.net).collect::<Vec<_>>(),
            "net": quote.net,
            "tax": quote.tax,
            "gross": quote.gross,
        }),
    }
}

/// A price; some lines have none.
fn price(of: PriceKey, dice: &mut Dice) -> Option<Value> {
    let price = json!({
        "of": of, "part": 1 + dice.below(300_000), "machining": dice.below(90_000), "minutes": 1 + dice.below(1_000),
    });
    (!dice.is_so(6)).then_some(price)
}

/// A standing line; some are not charged.
fn standing(of: Standing, dice: &mut Dice) -> Option<Value> {
    let line = json!({
        "of": of,
        "amount": dice.below(50_000),
        "minutes": dice.below(2_000),
        "share": dice.below(1_500),
        "applies": dice.one_of(&Applies::ALL),
    });
    (!dice.is_so(3)).then_some(line)
}

/// A line of the bill for parts or work on them.
struct Worked {
    of: PriceKey,
    quantity: u32,
    /// Who does it; none of what is only bought.
    hands: Option<Hands>,
}

/// A job that grows as at the bench: each change is checked first.
#[derive(Default)]
struct Bench {
    job: Job,
    last: Option<EditId>,
}

impl Bench {
    fn does(&mut self, change: Value) {
        let change: Change = serde_json::from_value(change).unwrap();
        self.job.check(&change).unwrap();
        let id = EditId::next(self.last, 1, DeviceId(1));
        self.last = Some(id);
        self.job.apply(id, &change);
    }

    /// Causes cost nothing.
    fn assessment(&self) -> Assessment {
        assess_given(&self.job, |_, _| diagnose(None, &self.job, &BTreeMap::new()))
    }

    /// What is charged for parts and work, in the order of the bill.
    fn worked(&self) -> Vec<Worked> {
        let Assessment { quote, lists, .. } = self.assessment();
        let items = || lists.iter().flat_map(|list| &list.items);
        let line = |line: &QuoteLine| {
            let of = line.of.work()?;
            let item = items().find(|item| item.of.as_ref() == Some(&line.of));
            Some(Worked { of, quantity: line.quantity, hands: item.and_then(|item| item.hands) })
        };
        quote.lines.iter().filter_map(line).collect()
    }
}

#[test]
fn bills_equal_those_of_pythons_decimal_module() {
    const BILLS: usize = 200;
    let mut dice = Dice(20_301);
    let bills: Vec<Bill> = (0..BILLS).map(|_| bill(&mut dice)).collect();
    let python = std::env::var("WEARBOOK_PYTHON").unwrap_or_else(|_| "python3".into());
    let started = Command::new(&python).args(["-c", SCRIPT]).stdin(Stdio::piped()).stdout(Stdio::piped()).spawn();
    let mut child = match started {
        Ok(child) => child,
        Err(error) => {
            println!("skipped: {python} does not run here ({error})");
            return;
        }
    };
    let asked: Vec<&Value> = bills.iter().map(|bill| &bill.asked).collect();
    std::io::Write::write_all(&mut child.stdin.take().unwrap(), &serde_json::to_vec(&asked).unwrap()).unwrap();
    let output = child.wait_with_output().unwrap();
    assert!(output.status.success(), "the script stopped");
    let told: Value = serde_json::from_slice(&output.stdout).unwrap();
    let answers = told["bills"].as_array().unwrap();
    println!("Python {}: {} bills", told["version"].as_str().unwrap_or("?"), answers.len());
    assert_eq!(answers.len(), BILLS);
    for (bill, answer) in bills.iter().zip(answers) {
        assert_eq!(bill.ours, *answer, "{}", bill.asked);
    }
    // What the bills are about: each thing that is rounded, and lines that have no price.
    let on = |is_so: fn(&Value) -> bool| bills.iter().filter(|bill| is_so(&bill.asked)).count();
    assert!(on(|asked| asked["by_line"] == true) > 50 && on(|asked| asked["by_line"] == false) > 50);
    assert!(on(|asked| asked["lines"].as_array().unwrap().contains(&Value::Null)) > 50);
    assert!(on(|asked| asked["standing"].as_array().unwrap().len() > 3) > 50);
    assert!(on(|asked| asked["lines"].as_array().unwrap().iter().any(|line| !line["each"].is_null())) > 50);
}
