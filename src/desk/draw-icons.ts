// npm run icons: draws the icons in public anew (a strand at the waterline). They are committed; run it after a change here.
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { chromium } from 'playwright-core'
import { findChromium } from './set-up/chromium.mjs'

const publicFolder = fileURLToPath(new URL('../../public', import.meta.url))

const colours = {
  ground: '#fbf8f1',
  rod: '#b79b74',
  strand: '#d3c6ae',
  ply: '#a08a66',
  bath: '#285f57',
  dyed: '#6f9d86',
  dyedPly: '#4b7d69'
}

/** Where the wave crosses the strand, in units of the 512 square. */
const waterlineY = 306

const wave = `M-188 ${waterlineY}${'q74 -36 148 0t148 0'.repeat(3)}V800H-188Z`

/** A rope of slanting turns; it begins over the rod. */
const strand = (yarn: string, ply: string): string =>
  Array.from({ length: 9 }, (_, turn) => {
    const y = 104 + turn * 39
    return `<ellipse cx="256" cy="${y}" rx="62" ry="31" transform="rotate(-32 256 ${y})" fill="${yarn}" stroke="${ply}" stroke-width="8"/>`
  }).join('')

/** `corner`: the radius of the corners; `scale`: how much of the square the picture takes. */
const icon = (corner: number, scale: number): string => `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 512 512">
  <clipPath id="card"><rect width="512" height="512" rx="${corner}"/></clipPath>
  <clipPath id="under"><path d="${wave}"/></clipPath>
  <g clip-path="url(#card)">
    <rect width="512" height="512" fill="${colours.ground}"/>
    <g transform="translate(256 256) scale(${scale}) translate(-256 -256)">
    <path d="${wave}" fill="${colours.bath}"/>
    <rect x="52" y="100" width="408" height="34" rx="17" fill="${colours.rod}"/>
    ${strand(colours.strand, colours.ply)}
    <g clip-path="url(#under)">${strand(colours.dyed, colours.dyedPly)}</g>
    </g>
  </g>
</svg>
`

/** Launchers cut maskable icons to a circle of 80 % of the width; iOS rounds the corners itself. */
const pictures = [
  { name: 'icon-192.png', sizePx: 192, svg: icon(112, 1) },
  { name: 'icon-512.png', sizePx: 512, svg: icon(112, 1) },
  { name: 'icon-maskable-512.png', sizePx: 512, svg: icon(0, 0.8) },
  { name: 'icon-180.png', sizePx: 180, svg: icon(0, 0.9) }
]

const found = findChromium()
if (!found.ok) throw new Error(found.say)
writeFileSync(join(publicFolder, 'icon.svg'), icon(112, 1))
const browser = await chromium.launch({ executablePath: found.path, args: ['--no-sandbox'] })
const page = await browser.newPage()
for (const { name, sizePx, svg } of pictures) {
  await page.setViewportSize({ width: sizePx, height: sizePx })
  await page.setContent(`<style>body{margin:0}svg{display:block;width:100vw;height:100vh}</style>${svg}`)
  await page.screenshot({ path: join(publicFolder, name), omitBackground: true })
}
await browser.close()
