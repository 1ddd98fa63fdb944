@file:Suppress("UNUSED_PARAMETER", "unused")

package androidx.core.view

import android.view.View
import androidx.core.graphics.Insets

fun interface OnApplyWindowInsetsListener {
  fun onApplyWindowInsets(v: View, insets: WindowInsetsCompat): WindowInsetsCompat
}

object ViewCompat {
  @JvmStatic fun setOnApplyWindowInsetsListener(view: View, listener: OnApplyWindowInsetsListener?): Unit = TODO()
  @JvmStatic fun requestApplyInsets(view: View): Unit = TODO()
  @JvmStatic fun getRootWindowInsets(view: View): WindowInsetsCompat? = TODO()
}

open class WindowInsetsCompat private constructor() {
  open fun getInsets(typeMask: Int): Insets = TODO()
  open fun isVisible(typeMask: Int): Boolean = TODO()

  class Type private constructor() {
    companion object {
      @JvmStatic fun systemBars(): Int = TODO()
      @JvmStatic fun displayCutout(): Int = TODO()
      @JvmStatic fun ime(): Int = TODO()
    }
  }

  companion object {
    @JvmField val CONSUMED: WindowInsetsCompat = TODO()
  }
}
