@file:Suppress("UNUSED_PARAMETER", "unused")

package androidx.activity.result.contract

import android.content.Intent
import androidx.activity.result.ActivityResult
import androidx.activity.result.IntentSenderRequest

abstract class ActivityResultContract<I, O>

class ActivityResultContracts private constructor() {
  class StartActivityForResult : ActivityResultContract<Intent, ActivityResult>()
  class StartIntentSenderForResult : ActivityResultContract<IntentSenderRequest, ActivityResult>()
  class RequestMultiplePermissions : ActivityResultContract<Array<String>, Map<String, @JvmSuppressWildcards Boolean>>()
}
