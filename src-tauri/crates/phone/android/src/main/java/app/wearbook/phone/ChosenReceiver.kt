package app.wearbook.phone

import android.content.BroadcastReceiver
import android.content.Context
import android.content.Intent

/** Hears from the share sheet that a program was chosen. */
class ChosenReceiver : BroadcastReceiver() {
    override fun onReceive(context: Context, intent: Intent) {
        open?.chosen()
    }

    companion object {
        /** The sheet that is open; the system makes a receiver anew for each message. */
        @Volatile
        var open: Sheet? = null
    }
}
