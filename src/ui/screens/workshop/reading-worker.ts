// Reads beside the page what would hold up the typing.
import { readTimed } from './reader.ts'

addEventListener('message', ({ data: text }: MessageEvent<string>) => postMessage(readTimed(text)))
