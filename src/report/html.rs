//! Blocks as one web page: no script, nothing from elsewhere, for a screen, a phone and paper.

use super::document::{Block, Lead, Row, Table};
use super::figures::escaped;

const STYLE: &str = "\
@page{margin:10mm}*{box-sizing:border-box}\
body{font:10pt/1.4 'DejaVu Sans',Arial,sans-serif;color:#0f172a;background:#fff;max-width:190mm;margin:0 auto;padding:4mm;overflow-wrap:anywhere}\
h1{font-size:15pt;margin:0 0 2mm}h2{font-size:11pt;margin:5mm 0 1.5mm;border-bottom:1px solid #0f172a;break-after:avoid}\
.answer{font-weight:700;border:1.5px solid #0f172a;border-left-width:8px;padding:2mm 3mm;margin:0 0 3mm}\
p{margin:0 0 1mm}.note{color:#475569;font-size:8.5pt;padding-left:4mm}\
dl{display:grid;grid-template-columns:minmax(24mm,max-content) 1fr;gap:.5mm 3mm;margin:0 0 2mm}dt{font-weight:700;grid-column:1}\
dd{margin:0;grid-column:2}ul{margin:0;padding-left:5mm}\
a{color:inherit}.wide{overflow-x:auto}table{border-collapse:collapse;width:100%;font-size:8.5pt}\
th,td{text-align:right;padding:.6mm 1.5mm;vertical-align:top}thead th{border-bottom:1px solid #0f172a}\
th:first-child{text-align:left}tbody th{font-weight:400}tr>:last-child{text-align:left}tr{break-inside:avoid}tbody tr:not(.of)>*{border-top:1px solid #e2e8f0}\
.of td{text-align:left;color:#475569;font-size:7.5pt;padding:0 1.5mm .6mm 5mm}\
pre{font-size:7pt;overflow-x:auto;margin:0 0 2mm}figure{margin:3mm 0;break-inside:avoid}svg{display:block;height:auto}\
@media print{body{font-size:8pt;line-height:1.3;padding:0;max-width:none}h1{font-size:13pt}h2{font-size:9.5pt;margin:2mm 0 .8mm}\
table{font-size:7pt;line-height:1.14}th,td{padding:.12mm 1.5mm}.of td{font-size:6.5pt;padding:0 1.5mm .2mm 5mm}\
ul{columns:2;column-gap:6mm;font-size:6.5pt;line-height:1.15;padding-left:4mm}li{break-inside:avoid}\
dl{font-size:7pt;line-height:1.2;gap:.2mm 3mm}p{margin:0 0 .5mm}\
p.note{font-size:6.5pt;line-height:1.2}figure{margin:1.5mm auto;width:72%}}\
@media(max-width:600px){dl{display:block}dd{margin-left:4mm}.wide table{min-width:150mm}figure{overflow-x:auto}svg{min-width:150mm}}";

/// A page with a title, the first block of which is the answer.
pub(super) fn page(title: &str, blocks: &[Block]) -> String {
    let mut page = Page::default();
    let mut blocks = blocks.iter();
    let title = escaped(title);
    if let Some(Block::Paragraph { text, .. }) = blocks.next() {
        page.put(None, &format!("<p class=\"answer\">{}</p>", escaped(text)));
    }
    for block in blocks {
        page.block(block);
    }
    page.within(None);
    format!(
        "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n\
         <meta name=\"viewport\" content=\"width=device-width,initial-scale=1\">\n<title>{title}</title>\n\
         <style>{STYLE}</style>\n</head>\n<body>\n<main>\n<h1>{title}</h1>\n{}</main>\n</body>\n</html>\n",
        page.body
    )
}

/// What is written, and the list that is open.
#[derive(Default)]
struct Page {
    body: String,
    within: Option<&'static str>,
}

impl Page {
    fn block(&mut self, block: &Block) {
        match block {
            Block::Heading(title) => self.put(None, &format!("<h2>{}</h2>", escaped(title))),
            Block::Paragraph { lead, text } => {
                let text = escaped(text);
                match Lead::of(lead) {
                    Lead::None => self.put(None, &format!("<p>{text}</p>")),
                    Lead::Bullet => self.put(Some("ul"), &format!("<li>{text}</li>")),
                    Lead::Term(word) => self.put(Some("dl"), &format!("<dt>{}</dt><dd>{text}</dd>", escaped(word))),
                    Lead::More if self.within == Some("dl") => self.put(Some("dl"), &format!("<dd>{text}</dd>")),
                    Lead::More | Lead::Note => self.put(None, &format!("<p class=\"note\">{text}</p>")),
                }
            }
            Block::Line(line) => self.put(Some("pre"), &escaped(line)),
            Block::Table(table) => self.put(None, &self::table(table)),
            Block::Figure(figure) => self.put(None, &format!("<figure>\n{}</figure>", figure.svg)),
            Block::Gap => self.within(None),
        }
    }

    /// In a list of this kind, or in none.
    fn put(&mut self, within: Option<&'static str>, text: &str) {
        self.within(within);
        self.body.push_str(text);
        self.body.push('\n');
    }

    fn within(&mut self, within: Option<&'static str>) {
        if self.within != within {
            if let Some(tag) = self.within {
                self.body.push_str(&format!("</{tag}>\n"));
            }
            if let Some(tag) = within {
                self.body.push_str(&format!("<{tag}>"));
            }
            self.within = within;
        }
    }
}

fn table(table: &Table) -> String {
    let head: String = table.head.iter().map(|cell| format!("<th scope=\"col\">{}</th>", escaped(cell))).collect();
    let row = |Row { cells, notes, page }: &Row| {
        let cell = |(place, cell): (usize, &String)| match (place, page, escaped(cell.trim())) {
            (0, None, cell) => format!("<th scope=\"row\">{cell}</th>"),
            (0, Some(page), cell) => format!("<th scope=\"row\"><a href=\"{}\">{cell}</a></th>", escaped(page)),
            (_, _, cell) => format!("<td>{cell}</td>"),
        };
        let cells: String = cells.iter().enumerate().map(cell).collect();
        let notes = notes.iter().map(|note| escaped(note)).collect::<Vec<_>>().join("; ");
        let (wide, of) = (table.head.len(), notes.is_empty());
        let notes = if of { notes } else { format!("<tr class=\"of\"><td colspan=\"{wide}\">{notes}</td></tr>\n") };
        format!("<tr>{cells}</tr>\n{notes}")
    };
    let rows: String = table.rows.iter().map(row).collect();
    format!("<div class=\"wide\"><table>\n<thead><tr>{head}</tr></thead>\n<tbody>\n{rows}</tbody>\n</table></div>")
}
