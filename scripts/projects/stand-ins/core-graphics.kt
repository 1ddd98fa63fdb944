@file:Suppress("UNUSED_PARAMETER", "unused")

package androidx.core.graphics

class Insets private constructor() {
  @JvmField val left: Int = TODO()
  @JvmField val top: Int = TODO()
  @JvmField val right: Int = TODO()
  @JvmField val bottom: Int = TODO()
}
