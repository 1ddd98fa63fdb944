package app.wearbook.phone

/**
 * How a share sheet ends. The system tells two things, in no certain order: that a program was chosen, and that the
 * sheet is gone. Told once, to whoever opened it. Knows nothing of Android, so that it can be tried without a device.
 */
class Sheet(private val tell: (chosen: Boolean) -> Unit) {
    private var isTold = false

    /** A program was chosen. */
    fun chosen() = end(true)

    /** The sheet has been gone for a while, and nothing was heard of a choice. */
    fun gone() = end(false)

    @Synchronized
    private fun end(chosen: Boolean) {
        if (isTold) return
        isTold = true
        tell(chosen)
    }
}
