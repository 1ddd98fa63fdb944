// The shop's instruments.
import { html } from '../vendor/lit-html/lit-html.js'
import { words } from '../words.js'

export const instruments = () => ({ title: words.screens.instruments, body: html`` })
