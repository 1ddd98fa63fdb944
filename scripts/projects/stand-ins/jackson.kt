@file:Suppress("UNUSED_PARAMETER", "unused")

package com.fasterxml.jackson.datatype.jsonorg

import com.fasterxml.jackson.databind.module.SimpleModule

open class JsonOrgModule : SimpleModule()
