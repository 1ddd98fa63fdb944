package app.wearbook.bench

import android.content.res.Configuration
import android.os.Build
import android.os.Bundle
import android.view.View
import android.webkit.WebView
import androidx.activity.enableEdgeToEdge
import androidx.core.view.ViewCompat
import androidx.core.view.WindowInsetsCompat
import kotlin.math.max
import kotlin.math.roundToInt

/** The one window. It decides where the page lies on the screen and how large its letters are, and nothing else. */
class MainActivity : TauriActivity() {
  private var page: WebView? = null

  override fun onCreate(savedInstanceState: Bundle?) {
    dress()
    super.onCreate(savedInstanceState)
    keepClear(findViewById(android.R.id.content))
  }

  override fun onWebViewCreate(webView: WebView) {
    page = webView
  }

  /** The manifest keeps the window through all of these, so what a new window would take over is taken over here. */
  override fun onConfigurationChanged(newConfig: Configuration) {
    super.onConfigurationChanged(newConfig)
    dress()
    // A web view asks for the reader's text size only when it is made.
    page?.settings?.textZoom = (newConfig.fontScale * 100).roundToInt()
  }

  /** Gives the window the paper of the look that the system has now, with bar icons that can be read on it. */
  private fun dress() {
    // From Android 15 on every window reaches under the bars. Before Android 11 the system does not say how tall the
    // keyboard is; there it keeps the window clear of bars and keyboard by itself, as long as we do not ask for more.
    if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.R) enableEdgeToEdge()
    window.setBackgroundDrawableResource(R.color.paper_edge)
  }

  /**
   * Keeps the page clear of bars, camera hole and keyboard. It is done here and not by the page, because web views before
   * version 144 tell their page of no bars, and the system no longer shortens a window that reaches under them.
   */
  private fun keepClear(room: View) {
    ViewCompat.setOnApplyWindowInsetsListener(room) { view, insets ->
      val fixed = insets.getInsets(WindowInsetsCompat.Type.systemBars() or WindowInsetsCompat.Type.displayCutout())
      val keyboard = insets.getInsets(WindowInsetsCompat.Type.ime())
      // The keyboard stands on the window's edge and covers the bar there: the taller of the two, never their sum.
      view.setPadding(fixed.left, fixed.top, fixed.right, max(fixed.bottom, keyboard.bottom))
      // Used up: a web view that does know of bars must not leave the same room once more.
      WindowInsetsCompat.CONSUMED
    }
  }
}
