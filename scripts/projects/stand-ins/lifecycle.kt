@file:Suppress("UNUSED_PARAMETER", "unused")

package androidx.lifecycle

interface LifecycleObserver

interface LifecycleOwner {
  val lifecycle: Lifecycle
}

abstract class Lifecycle {
  abstract fun addObserver(observer: LifecycleObserver)
  abstract fun removeObserver(observer: LifecycleObserver)
}

interface DefaultLifecycleObserver : LifecycleObserver {
  fun onCreate(owner: LifecycleOwner) {}
  fun onStart(owner: LifecycleOwner) {}
  fun onResume(owner: LifecycleOwner) {}
  fun onPause(owner: LifecycleOwner) {}
  fun onStop(owner: LifecycleOwner) {}
  fun onDestroy(owner: LifecycleOwner) {}
}

class ProcessLifecycleOwner private constructor() : LifecycleOwner {
  override val lifecycle: Lifecycle get() = TODO()

  companion object {
    @JvmStatic fun get(): LifecycleOwner = TODO()
  }
}
