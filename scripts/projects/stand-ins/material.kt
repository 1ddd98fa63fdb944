@file:Suppress("UNUSED_PARAMETER", "unused")

package com.google.android.material.dialog

import android.app.AlertDialog
import android.content.Context

open class MaterialAlertDialogBuilder(context: Context) : AlertDialog.Builder(context)
