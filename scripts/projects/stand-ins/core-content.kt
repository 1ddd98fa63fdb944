@file:Suppress("UNUSED_PARAMETER", "unused")

package androidx.core.content

import android.content.ContentProvider
import android.content.ContentValues
import android.content.Context
import android.content.SharedPreferences
import android.database.Cursor
import android.net.Uri
import android.os.ParcelFileDescriptor
import java.io.File

open class FileProvider() : ContentProvider() {
  constructor(resourceId: Int) : this()

  override fun onCreate(): Boolean = TODO()
  override fun query(
    uri: Uri,
    projection: Array<String>?,
    selection: String?,
    selectionArgs: Array<String>?,
    sortOrder: String?,
  ): Cursor? = TODO()
  override fun getType(uri: Uri): String? = TODO()
  override fun insert(uri: Uri, values: ContentValues?): Uri? = TODO()
  override fun delete(uri: Uri, selection: String?, selectionArgs: Array<String>?): Int = TODO()
  override fun update(uri: Uri, values: ContentValues?, selection: String?, selectionArgs: Array<String>?): Int = TODO()
  override fun openFile(uri: Uri, mode: String): ParcelFileDescriptor? = TODO()

  companion object {
    @JvmStatic fun getUriForFile(context: Context, authority: String, file: File): Uri = TODO()
    @JvmStatic fun getUriForFile(context: Context, authority: String, file: File, displayName: String): Uri = TODO()
  }
}

object ContextCompat {
  @JvmStatic fun checkSelfPermission(context: Context, permission: String): Int = TODO()
}

inline fun SharedPreferences.edit(commit: Boolean = false, action: SharedPreferences.Editor.() -> Unit): Unit = TODO()
