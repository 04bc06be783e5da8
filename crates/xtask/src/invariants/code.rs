//! What stands in the code of a file, without its tests and comments.

use anyhow::{Context, Result};
use proc_macro2::{TokenStream, TokenTree};
use syn::visit::Visit;
use syn::{BinOp, Expr, Item, Lit};

use super::CRATES;
use super::modules::{Modules, in_tokens, is_test};
use crate::repository::Repository;

/// The names and numbers in a file.
#[derive(Default)]
pub(crate) struct Code {
    /// Every path, and every path that is imported.
    pub paths: Vec<Vec<String>>,
    /// Every number with a point, as it is written.
    pub numbers: Vec<String>,
    /// Those of them that something is multiplied with or divided by.
    pub factors: Vec<String>,
    /// Every string, with its line. What documents an item is none.
    pub strings: Vec<(usize, String)>,
}

impl Code {
    /// Reads the text of a file.
    pub(crate) fn of(text: &str) -> Result<Self> {
        let mut code = Code::default();
        code.visit_file(&syn::parse_file(text)?);
        Ok(code)
    }

    /// Reads every file of a crate that is no test, each with its path in the repository.
    pub(crate) fn of_crate(repository: &Repository, name: &str) -> Result<Vec<(String, Self)>> {
        let of_name = |(folder, _): &&(&str, &str)| folder.split('/').nth(1) == Some(name);
        let (folder, root) = CRATES
            .iter()
            .find(of_name)
            .with_context(|| format!("no crate {name}"))?;
        let modules = Modules::read(&repository.at(folder).join(root))?;
        let files = modules.files().iter().map(|file| {
            let path = format!("{folder}/{file}");
            let code = Code::of(&repository.read(&path)?)?;
            Ok((path, code))
        });
        files.collect()
    }

    fn imports(&mut self, tree: &syn::UseTree, before: &mut Vec<String>) {
        match tree {
            syn::UseTree::Path(path) => {
                before.push(path.ident.to_string());
                self.imports(&path.tree, before);
                before.pop();
            }
            syn::UseTree::Group(group) => {
                for tree in &group.items {
                    self.imports(tree, before);
                }
            }
            syn::UseTree::Glob(_) => self.paths.push(before.clone()),
            syn::UseTree::Name(syn::UseName { ident })
            | syn::UseTree::Rename(syn::UseRename { ident, .. }) => {
                let name = ident.to_string();
                self.paths.push(before.iter().cloned().chain([name]).collect());
            }
        }
    }

    fn literals(&mut self, tokens: &TokenStream) {
        for token in tokens.clone() {
            match token {
                TokenTree::Literal(literal) => self.literal(&Lit::new(literal)),
                TokenTree::Group(group) => self.literals(&group.stream()),
                _ => {}
            }
        }
    }

    fn literal(&mut self, literal: &Lit) {
        match literal {
            Lit::Float(number) => self.numbers.push(number.base10_digits().to_owned()),
            Lit::Str(text) => self.strings.push((text.span().start().line, text.value())),
            _ => {}
        }
    }
}

impl<'a> Visit<'a> for Code {
    fn visit_item(&mut self, item: &'a Item) {
        let attributes = match item {
            Item::Const(item) => &item.attrs,
            Item::Fn(item) => &item.attrs,
            Item::Impl(item) => &item.attrs,
            Item::Mod(item) => &item.attrs,
            Item::Static(item) => &item.attrs,
            Item::Struct(item) => &item.attrs,
            Item::Use(item) => &item.attrs,
            _ => &Vec::new(),
        };
        if !is_test(attributes) {
            syn::visit::visit_item(self, item);
        }
    }

    fn visit_attribute(&mut self, _: &'a syn::Attribute) {}

    fn visit_item_use(&mut self, item: &'a syn::ItemUse) {
        self.imports(&item.tree, &mut Vec::new());
    }

    fn visit_path(&mut self, path: &'a syn::Path) {
        let segments = path.segments.iter();
        self.paths
            .push(segments.map(|segment| segment.ident.to_string()).collect());
        syn::visit::visit_path(self, path);
    }

    fn visit_macro(&mut self, of: &'a syn::Macro) {
        in_tokens(&of.tokens, &mut self.paths);
        self.literals(&of.tokens);
        self.visit_path(&of.path);
    }

    fn visit_lit(&mut self, literal: &'a Lit) {
        self.literal(literal);
    }

    fn visit_expr_binary(&mut self, expression: &'a syn::ExprBinary) {
        if let BinOp::Mul(_) | BinOp::Div(_) = expression.op {
            for side in [&expression.left, &expression.right] {
                if let Expr::Lit(syn::ExprLit {
                    lit: Lit::Float(number),
                    ..
                }) = &**side
                {
                    self.factors.push(number.base10_digits().to_owned());
                }
            }
        }
        syn::visit::visit_expr_binary(self, expression);
    }
}
