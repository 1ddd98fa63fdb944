import Foundation

/// Why something was not done, as Rust reads it (`app/src/phone/refused.rs`).
public enum Code: String {
  case noCamera = "no-camera"
  case noShare = "no-share"
  case noRoom = "no-room"
  case failed

  /// The code of a failure of the file system.
  public static func of(_ failure: Error) -> Code {
    let failure = failure as NSError
    let isFull = failure.domain == NSCocoaErrorDomain && failure.code == NSFileWriteOutOfSpaceError
    return isFull ? .noRoom : .failed
  }
}

/// Whether so many bytes are free where a file shall be written.
public func hasRoom(_ bytes: Int64, at file: URL) -> Bool {
  let folder = file.deletingLastPathComponent()
  let free = try? folder.resourceValues(forKeys: [.volumeAvailableCapacityKey]).volumeAvailableCapacity
  // Where the system does not say, the attempt tells.
  guard let free = free else { return true }
  return Int64(free) >= bytes
}
