#include "cli/page_style.hpp"

namespace pulsewright {

const char* const page_style = R"(
:root{color-scheme:light dark;--ink:#1a1a1a;--paper:#fdfcf9;--soft:#625e56;--rule:#d9d4c8;--band:#ece4d0;--bar:#8d8675;--a:#14375e;--b:#a8430b;--c:#2f6b3a;--d:#6a3d7d}
@media screen and (prefers-color-scheme:dark){:root{--ink:#eceae4;--paper:#1b1b1d;--soft:#aaa69d;--rule:#3d3b38;--band:#3a3422;--bar:#8f8873;--a:#9cc3ee;--b:#f0a066;--c:#93cf9c;--d:#cfa6de}}
*{box-sizing:border-box}
body{margin:0 auto;max-width:74rem;padding:1rem;background:var(--paper);color:var(--ink);font:16px/1.45 Georgia,"DejaVu Serif",serif;overflow-wrap:break-word}
h1{font-size:1.5rem;margin:.3em 0}h2{font-size:1.15rem;margin:1.6em 0 .4em}h3{font-size:1rem;margin:1.2em 0 .3em}
p{max-width:52rem}ul{margin:.3em 0;padding-left:1.2em;max-width:62rem}li{margin:.2em 0}.lead li{margin:.45em 0}.lead li:last-child{color:var(--soft);font-size:.9rem}details details{border:0;font-size:.95rem}
.pair{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,24rem),1fr));gap:0 2rem}
table{border-collapse:collapse;font-variant-numeric:tabular-nums;font-size:.9rem}
td,th{padding:.22em .8em .22em 0;border-bottom:1px solid var(--rule);text-align:right;vertical-align:top}
td{white-space:nowrap}th{font-weight:bold}
td:first-child,th:first-child,.words td,.words th{text-align:left}.words td:last-child{white-space:normal}
.red{color:#b3261e}.warn{border-left:4px solid var(--b);padding:.3em .8em;margin:.6em 0}.soft{color:var(--soft);font-size:.9rem}
.charts{display:grid;grid-template-columns:repeat(auto-fill,minmax(min(100%,27rem),1fr));gap:.8rem 1rem;align-items:start}.many{grid-template-columns:repeat(auto-fill,minmax(min(100%,22rem),1fr))}
svg.chart{display:block;width:100%;max-width:30rem;height:auto;font:11.5px Georgia,"DejaVu Serif",serif;fill:var(--ink)}svg .title{font-size:13px;font-weight:bold}
.grid{stroke:var(--rule);stroke-width:.7;fill:none}.half{stroke-dasharray:1 3}.band{fill:var(--band)}.bar{fill:var(--bar)}
.level{stroke:var(--soft);stroke-width:.9;stroke-dasharray:1 2;fill:none}
.line{fill:none;stroke-linejoin:round}.ink0{stroke:var(--a)}.ink1{stroke:var(--b)}.ink2{stroke:var(--c)}.ink3{stroke:var(--d)}
.legend{display:flex;flex-wrap:wrap;gap:.2em 1.6em;margin:.4em 0;padding:0;list-style:none;font-size:.9rem;max-width:none}.legend svg{width:2.5rem;height:.65rem;margin-right:.5em}
details{border-top:1px solid var(--rule);padding:.45em 0}summary{cursor:pointer;font-weight:bold;padding:.2em 0}
@media(max-width:46rem){
thead{display:none}table,tbody{display:block;width:100%}
tr{display:grid;grid-template-columns:repeat(3,1fr);gap:0 .5rem;padding:.35em 0;border-bottom:1px solid var(--rule)}
.two tr{grid-template-columns:repeat(2,1fr)}.one tr{grid-template-columns:1fr}
.words tr{grid-template-columns:repeat(2,1fr)}.words td:last-child{grid-column:1/-1}
td,.words td{display:block;overflow-wrap:anywhere;border:0;padding:.1em 0;text-align:left;white-space:normal}
td:first-child{grid-column:1/-1;font-weight:bold}
td:not(:first-child)::before{content:attr(data-h);display:block;color:var(--soft);font-size:.8rem}
}
@media print{
body{max-width:none;padding:0;font-size:11px}.charts{grid-template-columns:repeat(2,1fr)}
svg.chart,tr,li,.pair>div{break-inside:avoid}h2,h3,summary{break-after:avoid}summary{list-style:none}
details::details-content{content-visibility:visible;display:block;block-size:auto;opacity:1}
}
)";

}  // namespace pulsewright
