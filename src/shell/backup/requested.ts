/** What a request of a transaction gives. Awaited inside of it and nothing else awaited between, the transaction lives on. */
export function requested<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result)
    request.onerror = () => reject(request.error)
  })
}
