package app.wearbook.phone

import androidx.core.content.FileProvider

/** Lends single files to the camera and to whom the person shares with. */
class PhoneFiles : FileProvider()
