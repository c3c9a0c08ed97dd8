// For `npx depcruise core electron renderer samples tests` by hand; `npm run layers` is the check that counts,
// because it also fails when it saw fewer files than there are.
import { layerRules } from './tests/support/run/layer-rules.ts';

export default {
  ...layerRules,
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'require', 'node', 'default', 'types'],
    },
  },
};
