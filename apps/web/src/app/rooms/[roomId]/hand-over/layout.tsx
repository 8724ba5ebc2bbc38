export { Controls as default } from '@/ui/Controls.tsx'
