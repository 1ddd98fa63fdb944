@file:Suppress("UNUSED_PARAMETER", "unused")

package androidx.core.app

import android.app.Activity
import android.content.Context

object ActivityCompat {
  @JvmStatic fun checkSelfPermission(context: Context, permission: String): Int = TODO()
  @JvmStatic fun requestPermissions(activity: Activity, permissions: Array<String>, requestCode: Int): Unit = TODO()
  @JvmStatic fun shouldShowRequestPermissionRationale(activity: Activity, permission: String): Boolean = TODO()
}
