package app.wearbook.phone

import org.junit.Assert.assertEquals
import org.junit.Test

class SheetTest {
    private fun told(vararg events: (Sheet) -> Unit): List<Boolean> {
        val told = mutableListOf<Boolean>()
        val sheet = Sheet { told.add(it) }
        events.forEach { it(sheet) }
        return told
    }

    @Test
    fun it_ends_once_however_it_is_told() {
        val chosen = { sheet: Sheet -> sheet.chosen() }
        val gone = { sheet: Sheet -> sheet.gone() }
        assertEquals(listOf(true), told(chosen, gone))
        assertEquals(listOf(false), told(gone))
        assertEquals(listOf(true), told(chosen, chosen, gone))
        assertEquals(listOf(false), told(gone, chosen))
    }
}
