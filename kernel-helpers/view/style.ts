/**
 * The look of a result in a page: a workshop drawing, hairlines and plain letters, figures in column.
 *
 * Everything takes the page's own text colour, and lines and tints are thinned from it, so that it reads on
 * light and on dark paper without being told which: a notebook page may stay light on a dark desktop, where
 * asking prefers-color-scheme would give white on white. The accents are checked on both. What they say is said
 * in words as well. `:not(#jb)` lifts the rules above a notebook's own for tables, inside .jb only.
 */
export const viewStyle: string = `
.jb:not(#jb){
--line:color-mix(in srgb,currentColor 28%,transparent);--faint:color-mix(in srgb,currentColor 7%,transparent);
--bad:#d0342c;--warn:#b26a00;--good:#2a8a4f;
max-width:60rem;margin:.2rem 0 1rem;line-height:1.45;font-variant-numeric:tabular-nums lining-nums;
& *{box-sizing:border-box}
& .jb-title{font-size:1.05em;font-weight:600;margin:0 0 .7em;padding:0 0 .3em;border-bottom:1px solid}
& p{margin:.6em 0;max-width:72ch}
& dl{margin:.6em 0;display:grid;grid-template-columns:fit-content(40%) 1fr}
& dl>div{display:grid;grid-template-columns:subgrid;grid-column:1/-1;column-gap:1.5em;padding:.22em 0;border-bottom:1px solid var(--line)}
& dt{font-weight:400;opacity:.8;width:auto;float:none}
& dd{margin:0;font-weight:600}
& small{display:block;font-size:.85em;font-weight:400;opacity:.8}
& .jb-scroll{overflow-x:auto;margin:1em 0}
& table{border-collapse:collapse;border:0;margin:0;font-size:.95em;width:auto;min-width:min(100%,76ch);table-layout:auto;color:inherit}
& caption{text-align:left;caption-side:top;padding:0 0 .35em;font-weight:600;color:inherit}
& tr{background:none;border:0}
& :is(th,td){padding:.22em 1.4em .22em 0;border:0;text-align:left;vertical-align:baseline;max-width:36ch;white-space:normal;background:none;color:inherit}
& .jb-r{text-align:right}
& td:is(.jb-r,.jb-w){white-space:nowrap}
& thead th{font-weight:600;border-top:1px solid;vertical-align:bottom}
& thead tr:last-child>*{border-bottom:1px solid}
& .jb-unit{opacity:.75;padding-top:0;font-weight:400}
& tbody td{border-bottom:1px solid var(--line)}
& tr:is(.jb-warn,.jb-bad) td{background:var(--faint);font-weight:600}
& .jb-warn td:first-child{box-shadow:inset 3px 0 var(--warn);padding-left:.6em}
& .jb-bad td:first-child{box-shadow:inset 3px 0 var(--bad);padding-left:.6em}
& summary{cursor:pointer;padding:.3em 0;font-size:.95em}
& figure{margin:.8em 0}
& figure img{background:#fff;max-width:100%;height:auto}
& :is(dl>*,figure,.jb-verdict,.jb-caution){break-inside:avoid}
& figcaption{font-size:.9em;opacity:.85;margin-top:.3em;max-width:72ch}
& .jb-verdict{border-left:5px solid var(--a);padding:.15em 0 .15em .8em;margin:.9em 0}
& .jb-verdict strong{font-size:1.1em}
& .jb-verdict p{margin:.15em 0 0}
& .jb-yes{--a:var(--good)}& .jb-no{--a:var(--bad)}& .jb-open{--a:var(--warn)}
& .jb-caution{border:4px solid;border-image:repeating-linear-gradient(-45deg,#1c1c1c 0 9px,#f5c400 9px 18px) 4;padding:.5em .9em;margin:.9em 0}
& .jb-caution ul{margin:.3em 0 .1em;padding-left:1.3em;list-style:disc}
& .jb-warning{border-left:3px double;padding-left:.7em}
@media screen and (max-width:700px){& .jb-fit{overflow:auto;& img{min-width:var(--w)}}& caption{max-width:88vw}
& .jb-stack{& thead,& td:empty{display:none}& :is(table,caption,tbody,tr,td){display:block}& td{white-space:normal;border:0;text-align:left;max-width:none}& tr{border-bottom:1px solid var(--line)}& td:first-child{font-weight:600}& td:before{content:attr(data-h);font-weight:400;opacity:.8}}}
@media print{color:#000;background:#fff;&.jb-page{break-before:page;break-after:page;font-size:.86em;& dl>div{padding:.1em 0}& figure{margin:.3em 0}}& .jb-live{display:none}& figure img{display:block!important}& details::details-content{content-visibility:visible;block-size:auto}& .jb-scroll{overflow:visible}& .jb-folded>.jb-scroll{display:none}}
}
[data-jp-theme-light=false] .jb:not(#jb){--bad:#ff6b61;--warn:#f0a030;--good:#4fc27d}
`;
