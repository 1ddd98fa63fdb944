//! Work on the rows of a picture side by side. No row looks at another, so the result does not depend on how many
//! workers there are.

/// Calls `work` with the number of each row and its cells.
pub(super) fn each_row<T: Send>(cells: &mut [T], width: usize, work: impl Fn(usize, &mut [T]) + Sync) {
    let width = width.max(1);
    let workers = std::thread::available_parallelism().map_or(1, |n| n.get().min(8));
    let rows = cells.len().div_ceil(width).div_ceil(workers).max(1);
    std::thread::scope(|scope| {
        for (band, lines) in cells.chunks_mut(rows * width).enumerate() {
            let work = &work;
            scope.spawn(move || {
                for (index, line) in lines.chunks_mut(width).enumerate() {
                    work(band * rows + index, line);
                }
            });
        }
    });
}
