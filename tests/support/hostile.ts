/** Texts that would do something if they were taken for markup, a formula, a path or code. */
export const hostileTexts: readonly string[] = [
  ...[
    '<img src=x onerror="window.__hit=1">',
    '"><script>window.__hit=1</script>',
    "'><svg onload=window.__hit=1>",
  ],
  ...[
    '</title><script>window.__hit=1</script>',
    ']]><script>window.__hit=1</script>',
    '<!--',
    '&lt;b&gt;&#x3c;',
  ],
  ...[
    'javascript:window.__hit=1',
    '" onmouseover="window.__hit=1" x="',
    '</metadata></svg><script>1</script>',
  ],
  ...[
    '=1+1',
    '+1+1',
    '-1+1',
    '@SUM(A1)',
    '\t=1',
    '\r=1',
    ' =1',
    '＝1',
    '=HYPERLINK("http://127.0.0.1/x","y")',
  ],
  ...[
    'a,b',
    'a"b',
    'a\nb',
    '\u0000\u0007\u001b[2J',
    '\ud800',
    '\ufffe',
    '\u202eabc',
    '{{1+1}}',
    '${1+1}',
    '__proto__',
  ],
  ...['../../etc', 'CON', '%00', '𝔘𝔫𝔦', 'x'.repeat(5000)],
];
