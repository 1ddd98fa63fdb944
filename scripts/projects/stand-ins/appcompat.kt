@file:Suppress("UNUSED_PARAMETER", "unused")

package androidx.appcompat.app

import androidx.activity.ComponentActivity

open class AppCompatActivity : ComponentActivity()
