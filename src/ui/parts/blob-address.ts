import { useEffect, useState } from 'preact/hooks'

/** A blob: address for some bytes, given back when they are no longer shown: each holds its bytes in memory. */
export function useBlobAddress(key: string, make: () => Blob | null): string | null {
  const [address, setAddress] = useState<string | null>(null)
  useEffect(() => {
    const blob = make()
    if (blob === null) return
    const made = URL.createObjectURL(blob)
    setAddress(made)
    return () => {
      setAddress(null)
      URL.revokeObjectURL(made)
    }
  }, [key])
  return address
}
