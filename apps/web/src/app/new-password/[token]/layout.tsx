export { Controls as default } from '@/base/ui/Controls.tsx'
