@file:Suppress("UNUSED_PARAMETER", "unused")

package androidx.activity.result

import android.content.Intent
import android.content.IntentSender

class ActivityResult(val resultCode: Int, val data: Intent?)

fun interface ActivityResultCallback<O> {
  fun onActivityResult(result: O)
}

abstract class ActivityResultLauncher<I> {
  fun launch(input: I): Unit = TODO()
  abstract fun unregister()
}

class IntentSenderRequest(
  val intentSender: IntentSender,
  val fillInIntent: Intent?,
  val flagsMask: Int,
  val flagsValues: Int,
)
