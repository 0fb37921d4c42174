type Goods = { skeins: readonly { tag: string; massG: number }[]; massG: number }

/** What of the goods lies in one vessel of several, g. A jar holds the skein tagged like it; else the skeins go in their
 * order, one a jar; else the goods are shared. `index` from 0. */
export function vesselGoodsG(item: string, index: number, count: number, { skeins, massG }: Goods): number {
  const tagged = skeins.find(({ tag }) => tag.trim().toLowerCase() === item.toLowerCase())
  if (tagged) return tagged.massG
  return skeins.length === count ? (skeins[index]?.massG ?? 1) : massG / count
}
