// Reads long texts beside the page: the largest protocols take a second, and the typing must not wait for it.
import { outlineOf } from '../../../core/protocol/edit/rows.ts'

addEventListener('message', ({ data: text }: MessageEvent<string>) => postMessage({ text, outline: outlineOf(text) }))
