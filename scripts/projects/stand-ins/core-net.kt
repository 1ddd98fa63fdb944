@file:Suppress("UNUSED_PARAMETER", "unused")

package androidx.core.net

import android.net.Uri

fun String.toUri(): Uri = TODO()
