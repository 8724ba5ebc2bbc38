'use client'

import { createContext, type ReactNode, useCallback, useContext, useEffect, useState } from 'react'
import styles from './toast.module.css'

type Toast = { id: number; text: string; action?: { label: string; run: () => void } | undefined }
type Show = (toast: Omit<Toast, 'id'>) => void

const ToastContext = createContext<Show>(() => {})

/** How long a message stays; nothing depends on catching it, the same action stands on the line itself. */
const stayMs = 12_000

/** Says something at the foot of the page: "Done. Undo". */
export const useToast = (): Show => useContext(ToastContext)

export function ToastProvider({ children }: { children: ReactNode }) {
  const [toast, setToast] = useState<Toast | null>(null)
  const show = useCallback<Show>((next) => setToast((last) => ({ ...next, id: (last?.id ?? 0) + 1 })), [])
  useEffect(() => {
    if (toast === null) return
    const timer = window.setTimeout(() => setToast(null), stayMs)
    return () => window.clearTimeout(timer)
  }, [toast])
  return (
    <ToastContext value={show}>
      {children}
      <div className={styles.place} role="status" aria-live="polite">
        {toast && (
          <div className={styles.toast} key={toast.id}>
            <span>{toast.text}</span>
            {toast.action && (
              <button
                type="button"
                className={styles.action}
                onClick={() => {
                  toast.action?.run()
                  setToast(null)
                }}
              >
                {toast.action.label}
              </button>
            )}
          </div>
        )}
      </div>
    </ToastContext>
  )
}
