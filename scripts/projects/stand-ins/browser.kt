@file:Suppress("UNUSED_PARAMETER", "unused")

package androidx.browser.customtabs

import android.content.Context
import android.content.Intent
import android.net.Uri

class CustomTabsIntent private constructor() {
  val intent: Intent get() = TODO()
  fun launchUrl(context: Context, url: Uri): Unit = TODO()
  class Builder {
    fun build(): CustomTabsIntent = TODO()
  }
}
