@file:Suppress("UNUSED_PARAMETER", "unused")

package androidx.webkit

import android.content.Context
import android.net.Uri
import android.webkit.WebResourceResponse
import android.webkit.WebView

object WebViewFeature {
  const val DOCUMENT_START_SCRIPT = "DOCUMENT_START_SCRIPT"
  @JvmStatic fun isFeatureSupported(feature: String): Boolean = TODO()
}

interface ScriptHandler {
  fun remove()
}

object WebViewCompat {
  @JvmStatic
  fun addDocumentStartJavaScript(
    webView: WebView,
    script: String,
    allowedOriginRules: Set<String>,
  ): ScriptHandler = TODO()
}

class WebViewAssetLoader private constructor() {
  fun shouldInterceptRequest(url: Uri): WebResourceResponse? = TODO()

  fun interface PathHandler {
    fun handle(path: String): WebResourceResponse?
  }

  class AssetsPathHandler(context: Context) : PathHandler {
    override fun handle(path: String): WebResourceResponse? = TODO()
  }

  class Builder {
    fun setDomain(domain: String): Builder = TODO()
    fun addPathHandler(path: String, handler: PathHandler): Builder = TODO()
    fun build(): WebViewAssetLoader = TODO()
  }
}
