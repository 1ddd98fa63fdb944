package app.wearbook.phone

import android.app.Activity
import android.app.PendingIntent
import android.content.ActivityNotFoundException
import android.content.ClipData
import android.content.Intent
import android.net.Uri
import android.os.Handler
import android.os.Looper
import android.provider.MediaStore
import android.view.HapticFeedbackConstants
import android.view.WindowManager
import androidx.activity.result.ActivityResult
import androidx.core.content.FileProvider
import app.tauri.annotation.ActivityCallback
import app.tauri.annotation.Command
import app.tauri.annotation.InvokeArg
import app.tauri.annotation.TauriPlugin
import app.tauri.plugin.Invoke
import app.tauri.plugin.JSObject
import app.tauri.plugin.Plugin
import java.io.File

@InvokeArg
class TakePhotoArgs {
    lateinit var path: String
    var room: Long = 0
}

@InvokeArg
class ShareArgs {
    lateinit var paths: Array<String>
    lateinit var mime: String
    lateinit var title: String
    lateinit var text: String
}

@InvokeArg
class KeepAwakeArgs {
    var on: Boolean = false
}

/** Does what Rust asks and answers with a code. What is asked was checked there, where the answer is understood too. */
@TauriPlugin
class PhonePlugin(private val activity: Activity) : Plugin(activity) {

    @Command
    fun takePhoto(invoke: Invoke) = answering(invoke, Code.NO_CAMERA) {
        val args = invoke.parseArgs(TakePhotoArgs::class.java)
        val file = File(args.path)
        if ((file.parentFile?.usableSpace ?: 0) < args.room) {
            invoke.reject("There is no room for a photo.", Code.NO_ROOM)
            return@answering
        }
        val address = addressOf(file)
        val camera = Intent(MediaStore.ACTION_IMAGE_CAPTURE)
            .putExtra(MediaStore.EXTRA_OUTPUT, address)
            .addFlags(Intent.FLAG_GRANT_WRITE_URI_PERMISSION or Intent.FLAG_GRANT_READ_URI_PERMISSION)
        // What is lent goes along with the clip; older cameras are not lent what stands in an extra alone.
        camera.clipData = ClipData.newRawUri("", address)
        // Started without asking first whether there is one: the system hides other programs from such questions.
        startActivityForResult(invoke, camera, "photoTaken")
    }

    /** What the camera says of how it went is not passed on: the file tells. */
    @ActivityCallback
    fun photoTaken(invoke: Invoke, @Suppress("UNUSED_PARAMETER") result: ActivityResult) {
        invoke.resolve()
    }

    @Command
    fun share(invoke: Invoke) = answering(invoke, Code.NO_SHARE) {
        val args = invoke.parseArgs(ShareArgs::class.java)
        val addresses = ArrayList(args.paths.map { addressOf(File(it)) })
        val send = Intent(if (addresses.size > 1) Intent.ACTION_SEND_MULTIPLE else Intent.ACTION_SEND)
        send.type = args.mime
        when (addresses.size) {
            0 -> {}
            1 -> send.putExtra(Intent.EXTRA_STREAM, addresses[0])
            else -> send.putParcelableArrayListExtra(Intent.EXTRA_STREAM, addresses)
        }
        if (args.text.isNotEmpty()) send.putExtra(Intent.EXTRA_TEXT, args.text)
        if (args.title.isNotEmpty()) {
            send.putExtra(Intent.EXTRA_SUBJECT, args.title).putExtra(Intent.EXTRA_TITLE, args.title)
        }
        send.addFlags(Intent.FLAG_GRANT_READ_URI_PERMISSION)
        send.clipData = clipOf(addresses)
        val sheet = Sheet { chosen -> invoke.resolve(JSObject().put("chosen", chosen)) }
        ChosenReceiver.open = sheet
        val heard = PendingIntent.getBroadcast(
            activity,
            0,
            Intent(activity, ChosenReceiver::class.java),
            // The sheet writes into it which program it was.
            PendingIntent.FLAG_UPDATE_CURRENT or MUTABLE,
        )
        startActivityForResult(invoke, Intent.createChooser(send, args.title, heard.intentSender), "sheetGone")
    }

    @ActivityCallback
    fun sheetGone(@Suppress("UNUSED_PARAMETER") invoke: Invoke, @Suppress("UNUSED_PARAMETER") result: ActivityResult) {
        val sheet = ChosenReceiver.open ?: return
        // Its result is “cancelled” either way, and the word of a choice may come after it.
        Handler(Looper.getMainLooper()).postDelayed({ sheet.gone() }, PATIENCE_MILLIS)
    }

    @Command
    fun keepAwake(invoke: Invoke) {
        val on = invoke.parseArgs(KeepAwakeArgs::class.java).on
        activity.runOnUiThread {
            val flag = WindowManager.LayoutParams.FLAG_KEEP_SCREEN_ON
            if (on) activity.window.addFlags(flag) else activity.window.clearFlags(flag)
            invoke.resolve()
        }
    }

    @Command
    fun tick(invoke: Invoke) {
        activity.runOnUiThread {
            // Needs no permission, and heeds what the person has set for touch.
            activity.window.decorView.performHapticFeedback(HapticFeedbackConstants.KEYBOARD_TAP)
            invoke.resolve()
        }
    }

    /** Runs what starts another program; that there is none, or none that may, has its code. */
    private fun answering(invoke: Invoke, none: String, start: () -> Unit) {
        try {
            start()
        } catch (missing: ActivityNotFoundException) {
            invoke.reject("No program does this.", none, missing)
        } catch (forbidden: SecurityException) {
            invoke.reject("The system forbids it.", none, forbidden)
        } catch (failure: Exception) {
            invoke.reject("It failed.", Code.FAILED, failure)
        }
    }

    private fun addressOf(file: File): Uri =
        FileProvider.getUriForFile(activity, "${activity.packageName}.phone.files", file)

    private fun clipOf(addresses: List<Uri>): ClipData? {
        val first = addresses.firstOrNull() ?: return null
        val clip = ClipData.newRawUri("", first)
        addresses.drop(1).forEach { clip.addItem(ClipData.Item(it)) }
        return clip
    }

    private companion object {
        const val PATIENCE_MILLIS = 700L

        /** `PendingIntent.FLAG_MUTABLE`, which has a name only from Android 12 on; before it nothing reads the bit. */
        const val MUTABLE = 1 shl 25
    }
}
