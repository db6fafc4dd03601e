import DefaultTheme from 'vitepress/theme';
import './page.css';

/** The theme as it comes; the elements wake in the browser only. */
export default {
  extends: DefaultTheme,
  async enhanceApp() {
    if (!import.meta.env.SSR) await import('../../../dist/define/index.js');
  },
};
