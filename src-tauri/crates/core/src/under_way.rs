//! Something that takes a while: how far it is, and whether it is still wanted.

use std::sync::atomic::{AtomicBool, AtomicU32, Ordering};

/// How far something is that takes a while: told to those who wait, stopped by them. Shared between threads.
#[derive(Debug, Default)]
pub struct UnderWay {
    done: AtomicU32,
    steps: AtomicU32,
    stopped: AtomicBool,
}

/// It was stopped by whoever waited for it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("This was stopped; nothing was changed.")]
pub struct Stopped;

impl UnderWay {
    /// So many steps more are to come.
    pub fn expect(&self, steps: usize) {
        self.steps.fetch_add(u32::try_from(steps).unwrap_or(u32::MAX), Ordering::Relaxed);
    }

    /// A step is done.
    ///
    /// # Errors
    /// [`Stopped`], if no more are wanted.
    pub fn step(&self) -> Result<(), Stopped> {
        self.done.fetch_add(1, Ordering::Relaxed);
        self.go_on()
    }

    /// Whether to go on, where there is no step to tell of.
    ///
    /// # Errors
    /// [`Stopped`], if it is no longer wanted.
    pub fn go_on(&self) -> Result<(), Stopped> {
        if self.stopped.load(Ordering::Relaxed) { Err(Stopped) } else { Ok(()) }
    }

    /// It is no longer wanted: it ends at its next step.
    pub fn stop(&self) {
        self.stopped.store(true, Ordering::Relaxed);
    }

    /// Steps done, and steps known of so far.
    pub fn steps(&self) -> (u32, u32) {
        (self.done.load(Ordering::Relaxed), self.steps.load(Ordering::Relaxed))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn it_ends_at_the_step_after_it_was_stopped() {
        let way = UnderWay::default();
        way.expect(3);
        assert_eq!(way.step(), Ok(()));
        way.stop();
        assert_eq!(way.step(), Err(Stopped));
        assert_eq!(way.go_on(), Err(Stopped));
        assert_eq!(way.steps(), (2, 3));
    }
}
