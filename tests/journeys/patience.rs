//! Waiting for what a program will do in its own time.

use std::time::{Duration, Instant};

use crate::failure::Outcome;

/// How long anything may take; generous, because the machine that tests is busy.
const PATIENCE: Duration = Duration::from_secs(20);
const PAUSE: Duration = Duration::from_millis(50);

/// Asks again and again until the answer is no failure. The last failure stands once patience has run out.
pub(crate) async fn until<T>(asked: impl AsyncFn() -> Outcome<T>) -> Outcome<T> {
    let started = Instant::now();
    loop {
        let answer = asked().await;
        if answer.is_ok() || started.elapsed() > PATIENCE {
            return answer;
        }
        tokio::time::sleep(PAUSE).await;
    }
}
