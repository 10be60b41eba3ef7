//! Blocks as text for a terminal or a file.

use crate::report::document::{Block, WIDTH};
use textwrap::{Options, fill};

/// All of them, in so many columns.
pub(super) fn text(blocks: &[Block], columns: usize) -> String {
    let mut text = Text { page: String::new(), columns };
    for block in blocks {
        match block {
            Block::Heading(title) => {
                text.line("");
                text.wrapped("", title);
                text.line(&"-".repeat(title.chars().count().min(columns)));
            }
            Block::Paragraph { lead, text: words } => text.wrapped(lead, words),
            Block::Line(line) => text.line(line),
            Block::Table(table) => {
                text.line(&table.short_head);
                for row in &table.rows {
                    text.line(&(table.layout)(&row.cells));
                    for note in &row.notes {
                        text.wrapped("    ", note);
                    }
                }
            }
            Block::Gap => text.line(""),
            Block::Figure(_) => {}
        }
    }
    text.page
}

struct Text {
    page: String,
    columns: usize,
}

impl Text {
    /// A line as it is laid out; on a terminal that is too narrow for it, in more than one.
    fn line(&mut self, line: &str) {
        if self.columns < WIDTH && line.chars().count() > self.columns {
            let options = Options::new(self.columns).subsequent_indent("        ");
            for line in fill(line, options).lines() {
                self.push(line);
            }
        } else {
            self.push(line);
        }
    }

    fn push(&mut self, line: &str) {
        self.page.push_str(line.trim_end());
        self.page.push('\n');
    }

    /// `first` at the start, the rest under its end.
    fn wrapped(&mut self, first: &str, text: &str) {
        // A text of one short line, which no word can make wider than its bytes, needs no looking for where to break it.
        if first.len() + text.len() <= self.columns && !text.is_empty() && !text.contains('\n') {
            return self.push(&format!("{first}{text}"));
        }
        let rest = " ".repeat(first.chars().count());
        let options = Options::new(self.columns).initial_indent(first).subsequent_indent(&rest);
        for line in fill(text, options).lines() {
            self.push(line);
        }
    }
}
