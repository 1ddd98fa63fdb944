@file:Suppress("UNUSED_PARAMETER", "unused")

package androidx.annotation

annotation class RequiresApi(val value: Int = 1, val api: Int = 1)
annotation class MainThread
annotation class WorkerThread
annotation class UiThread
