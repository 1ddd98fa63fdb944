package app.wearbook.phone

/** Why something was not done, as Rust reads it (`app/src/phone/refused.rs`). Knows nothing of Android. */
object Code {
    const val NO_CAMERA = "no-camera"
    const val NO_SHARE = "no-share"
    const val NO_ROOM = "no-room"
    const val FAILED = "failed"
}
