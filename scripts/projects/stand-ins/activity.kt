@file:Suppress("UNUSED_PARAMETER", "unused")

package androidx.activity

import android.app.Activity
import androidx.activity.result.ActivityResultCallback
import androidx.activity.result.ActivityResultLauncher
import androidx.activity.result.contract.ActivityResultContract
import androidx.lifecycle.Lifecycle
import androidx.lifecycle.LifecycleOwner

abstract class OnBackPressedCallback(open var isEnabled: Boolean) {
  abstract fun handleOnBackPressed()
  fun remove(): Unit = TODO()
}

class OnBackPressedDispatcher {
  fun addCallback(onBackPressedCallback: OnBackPressedCallback): Unit = TODO()
  fun addCallback(owner: LifecycleOwner, onBackPressedCallback: OnBackPressedCallback): Unit = TODO()
  fun onBackPressed(): Unit = TODO()
}

open class ComponentActivity : Activity(), LifecycleOwner {
  override val lifecycle: Lifecycle get() = TODO()
  val onBackPressedDispatcher: OnBackPressedDispatcher get() = TODO()
  fun <I, O> registerForActivityResult(
    contract: ActivityResultContract<I, O>,
    callback: ActivityResultCallback<O>,
  ): ActivityResultLauncher<I> = TODO()
}

fun ComponentActivity.enableEdgeToEdge(): Unit = TODO()
