/** Lets the person take a picture with the device's own camera, or choose one of its files. Null: nothing was chosen. Must
 * be called inside a tap. The field lies outside the screens: a call that comes while the camera is open may change them,
 * and the picture must not go with them. */
export function choosePicture(from: 'camera' | 'file'): Promise<File | null> {
  return new Promise((resolve) => {
    const field = document.createElement('input')
    field.type = 'file'
    field.accept = 'image/*'
    if (from === 'camera') field.setAttribute('capture', 'environment')
    field.hidden = true
    const done = (file: File | null): void => {
      field.remove()
      resolve(file)
    }
    field.addEventListener('change', () => done(field.files?.[0] ?? null))
    field.addEventListener('cancel', () => done(null))
    document.body.append(field)
    field.click()
  })
}
