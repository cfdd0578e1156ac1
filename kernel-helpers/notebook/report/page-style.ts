/**
 * The look of the report: a sheet off the drawing board. One weight of line, one accent, letters for labels as a
 * draughtsman writes them; on paper the same without shade or tint.
 */
export const pageStyle: string = `
:root{color-scheme:light dark;--paper:#fcfbf8;--board:#e8e6e0;--ink:#20262c;--soft:#5b6570;--hair:#b9bec3;--tint:#f3f1ea;--blue:#1f4e79;--red:#b3261e;--green:#23703f;--word:#1f4e79;--number:#8a4b08;--string:#2b6a3e}
@media (prefers-color-scheme:dark){:root{--paper:#191d21;--board:#101316;--ink:#dfe3e6;--soft:#9aa5af;--hair:#4a535b;--tint:#20262b;--blue:#8ab8e6;--red:#ff8a80;--green:#7fcf9b;--word:#8ab8e6;--number:#e0b070;--string:#95cfa4}}
@media (prefers-color-scheme:dark){.jb:not(#jb){--bad:#ff6b61;--warn:#f0a030;--good:#4fc27d}}
*{box-sizing:border-box}
html{background:var(--board);-webkit-text-size-adjust:100%;scroll-padding-top:1rem}
body{max-width:62rem;margin:1.5rem auto;padding:0 2.75rem 2.75rem;background:var(--paper);color:var(--ink);border:1px solid var(--ink);outline:1px solid var(--hair);outline-offset:-.7rem;font:16px/1.55 "Segoe UI","Helvetica Neue",Helvetica,Arial,"Liberation Sans",sans-serif;overflow-wrap:break-word}
a{color:var(--blue);text-underline-offset:.15em}
:focus-visible{outline:2px solid var(--blue);outline-offset:2px}
h1,h2,h3,h4,h5,h6{line-height:1.2;font-weight:600;text-wrap:balance;break-after:avoid}
h1{font-size:2.1rem;margin:.1em 0 .8em;letter-spacing:-.01em}
h2{font-size:1.5rem;margin:0}
h3{font-size:1.15rem;margin:2em 0 .6em}
h4{font-size:1rem;margin:1.6em 0 .5em}h5,h6{font-size:.95rem;margin:1.4em 0 .4em}
.kind,.number,.title-block dt,.stamp,.banner,label[for=with-code]{font-size:.72rem;letter-spacing:.09em;text-transform:uppercase;color:var(--soft);margin:0}
.head{padding-top:2.6rem}
.banner{border:1px solid;color:var(--red);padding:.45rem .8rem;margin:0 0 1.6rem;text-align:center;font-weight:600}
.title-block{display:flex;flex-wrap:wrap;gap:1px;margin:0;border:1px solid var(--ink);overflow:hidden;break-inside:avoid}
.title-block>div{flex:1 1 11rem;box-shadow:0 0 0 1px var(--hair);padding:.4rem .7rem .55rem;min-width:0;overflow-wrap:anywhere}
.title-block .long{flex-basis:100%}
.title-block dd{margin:.1rem 0 0;font-variant-numeric:tabular-nums}
.title-block .long dd{font:.8rem/1.4 ui-monospace,Consolas,"DejaVu Sans Mono","Liberation Mono",monospace}
nav{margin:2.2rem 0 0}
nav h2{font-size:1.15rem}
nav :is(ol,ul){margin:.4rem 0;padding:0;list-style:none;border-top:1px solid var(--ink)}
nav ul{border-top:0;margin-top:-.4rem}
nav li{display:flex;justify-content:space-between;align-items:baseline;gap:1rem;padding:.3rem 0;border-bottom:1px solid var(--hair)}
.decided{margin:2.2rem 0 0}.decided h2{font-size:1.15rem}
.decided ol{margin:.4rem 0;padding:0;list-style:none;border-top:1px solid var(--ink)}
.decided li{display:grid;grid-template-columns:2fr 2fr auto;gap:.1rem 1.2rem;padding:.35rem 0;border-bottom:1px solid var(--hair);break-inside:avoid}
.decided em{color:var(--soft);font-style:normal;font-size:.88em}.decided em::before{content:"· "}
.signed{color:var(--soft);font-variant-numeric:tabular-nums;white-space:nowrap}
.outcome{margin:.3rem 0 .6rem;color:var(--soft)}.outcome strong{color:var(--red)}
.stamp{border:1px solid;padding:.05rem .45rem;white-space:nowrap;flex:none}
.ok{color:var(--green)}.stopped{color:var(--red);font-weight:700}
#with-code{accent-color:var(--blue);margin:1.4rem .35rem 0 0;vertical-align:middle}
label[for=with-code]{vertical-align:middle;position:relative;top:.7rem;cursor:pointer}
#with-code:not(:checked)~main .cell:not(.failed)>.code{display:none}
main>section,footer{margin-top:3.2rem;border-top:2px solid var(--ink);padding-top:1rem}
main>section>header{display:flex;flex-wrap:wrap;align-items:baseline;gap:.1rem 1rem;margin-bottom:1.2rem}
main>section>header h2{flex:1 1 auto}.number{flex-basis:100%}
.text{max-width:44rem}
.text :is(p,ul,ol,blockquote){margin:.7em 0}
.text blockquote{border-left:2px solid var(--hair);margin-left:0;padding-left:1rem;color:var(--soft)}
img{max-width:100%;height:auto}
pre,code,kbd,samp{font-family:ui-monospace,Consolas,"DejaVu Sans Mono","Liberation Mono",monospace}
code{font-size:.88em}
pre{margin:.6rem 0;overflow-x:auto;font-size:.8rem;line-height:1.5;white-space:pre;overflow-wrap:normal;tab-size:2}
pre code{font-size:inherit}
.katex-display{overflow:auto hidden;padding:.2em 0}
.cell{margin:.9rem 0 1.3rem}.code+.output{margin-top:1.1rem}
.code,.text pre{border-left:2px solid var(--hair);padding:.1rem 0 .1rem .9rem;color:var(--soft);font-size:.76rem}
.failed>.code{border-color:var(--red)}
.stream,.plain,.json,.traceback{background:var(--tint);padding:.5rem .8rem;max-height:32rem;overflow:auto}
.stderr{border-left:3px double var(--red)}
.notices{border:1px solid var(--hair);padding:.5rem .9rem;margin:.8rem 0}.notices ul{margin:.3rem 0 0;padding-left:1.2rem}
.error,.failure{border:1px solid var(--red);padding:.5rem .9rem;margin:.8rem 0}
.error strong,.failure strong{color:var(--red)}.error p{margin:0}
.error pre,.failure pre{background:none;padding:0;margin:.5rem 0 0;white-space:pre-wrap}
.left-out,.remark,.hash{color:var(--soft);font-size:.85rem}
.hash{font-family:ui-monospace,Consolas,"DejaVu Sans Mono","Liberation Mono",monospace;font-size:.72rem;margin-left:.6rem}
.scroll{overflow-x:auto}
.text table,.foreign table{border-collapse:collapse;font-size:.95em}
:is(.text,.foreign) :is(th,td){padding:.25em 1.2em .25em 0;border-bottom:1px solid var(--hair);text-align:left;vertical-align:baseline}
:is(.text,.foreign) thead th{border-bottom:1px solid var(--ink)}
.foreign>:first-child,.text>:first-child{margin-top:0}
.paper{position:relative;background:#fff;border:1px solid var(--hair);max-width:calc(var(--width) + 2px);overflow-x:auto}
.paper img{display:block}
.live{height:var(--height)}
.paper:not(.is-live) .live{position:absolute;inset:0;visibility:hidden}
.paper.is-live img{display:none}
@media (hover:none){.live .modebar-container{display:none}}
.readings .jb:not(#jb) table{font-size:.85rem}
.readings .file{margin:.2rem 0 .6rem}
.remarks,.files{padding-left:1.2rem;font-size:.95rem}
.remarks{columns:2 18rem;color:var(--soft);font-size:.88rem}
footer{border:0}footer h2{margin-bottom:.8rem}
.hljs-keyword,.hljs-built_in,.hljs-literal{color:var(--word)}.hljs-string,.hljs-regexp{color:var(--string)}.hljs-number{color:var(--number)}.hljs-comment{font-style:italic}.hljs-title,.hljs-attr,.hljs-property{color:var(--ink)}
.ansi-red-fg,.ansi-bright-red-fg{color:var(--red)}.ansi-green-fg,.ansi-bright-green-fg{color:var(--green)}.ansi-blue-fg,.ansi-bright-blue-fg,.ansi-cyan-fg,.ansi-bright-cyan-fg{color:var(--blue)}.ansi-yellow-fg,.ansi-bright-yellow-fg{color:var(--number)}.ansi-bright-black-fg,.ansi-dim{color:var(--soft)}.ansi-bold{font-weight:700}.ansi-italic{font-style:italic}.ansi-underline{text-decoration:underline}
@media (max-width:45rem){.decided li{grid-template-columns:1fr}body{margin:0;border:0;outline:0;padding:0 1rem 1.5rem}.head{padding-top:1.2rem}h1{font-size:1.6rem}.title-block>div{flex-basis:8.5rem}.hash{display:block;margin:.2rem 0 0}}
@media print{:root{--paper:#fff;--board:#fff;--ink:#000;--soft:#444;--hair:#999;--tint:#fff;--blue:#000;--red:#000;--green:#000;--word:#000;--number:#000;--string:#000}
@page{margin:16mm 14mm 18mm}html{font-size:12.5px}
body{margin:0;padding:0;border:0;outline:0;max-width:none;font-size:9pt}
#with-code,label[for=with-code]{display:none}.head{padding-top:0}
main>section.sheet{break-before:page;margin-top:0}
.cell,.error,.failure,tr,figure,.jb-verdict{break-inside:avoid}.cell:has(table,pre){break-inside:auto}
.jb .jb-scroll summary{display:none}
.jb :is(table:not(:has(tr:nth-child(9))),dl:not(:has(>:nth-child(7)))){break-inside:avoid}
.jb.jb:not(#jb) :is(th,td){padding-right:.9em}.readings .jb:not(#jb){& table{font-size:.65rem}& td:is(.jb-r,.jb-w){white-space:normal}}
caption,thead,tbody tr:first-child,dl>:first-child{break-after:avoid}tbody tr:last-child,dl>:last-child{break-before:avoid}
pre,.scroll{overflow:visible;white-space:pre-wrap;max-height:none}
.paper{border-color:#999;overflow:visible}.paper.is-live img{display:block}.live{display:none}
.text a[href^=http]::after{content:" (" attr(href) ")";font-size:.85em}}
`;
