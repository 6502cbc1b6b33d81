/** The metadata packet: the same facts as the file's Info, and what the file claims to be. */

/** What the file says of itself. Texts as they are; escaping is done here. */
export interface Info {
  readonly Title: string
  readonly Author: string
  readonly Subject: string
  readonly Creator: string
  readonly Producer: string
  readonly CreationDate: Date
  readonly ModDate: Date
}

/** Text that XML reads back unchanged. */
const escapeXml = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;')

/** To the second, in UTC: '2026-03-19T12:00:00Z', as the Info dictionary has it. */
const xmpDate = (date: Date): string => `${date.toISOString().slice(0, 19)}Z`

const inEveryLanguage = (text: string): string =>
  `<rdf:Alt><rdf:li xml:lang="x-default">${escapeXml(text)}</rdf:li></rdf:Alt>`

/**
 * PDF/UA has no schema of its own in PDF/A, so the file must describe the one field it uses.
 * Source: ISO 19005-1:2005, 6.7.8, extension schemas; ISO 14289-1:2014, clause 5 (clauses from
 * memory, not checked against the print).
 */
const universalAccess = `
<rdf:Description rdf:about="" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">
  <pdfuaid:part>1</pdfuaid:part>
</rdf:Description>
<rdf:Description rdf:about=""
    xmlns:pdfaExtension="http://www.aiim.org/pdfa/ns/extension/"
    xmlns:pdfaSchema="http://www.aiim.org/pdfa/ns/schema#"
    xmlns:pdfaProperty="http://www.aiim.org/pdfa/ns/property#">
  <pdfaExtension:schemas><rdf:Bag><rdf:li rdf:parseType="Resource">
    <pdfaSchema:schema>PDF/UA identification</pdfaSchema:schema>
    <pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>
    <pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>
    <pdfaSchema:property><rdf:Seq><rdf:li rdf:parseType="Resource">
      <pdfaProperty:name>part</pdfaProperty:name>
      <pdfaProperty:valueType>Integer</pdfaProperty:valueType>
      <pdfaProperty:category>internal</pdfaProperty:category>
      <pdfaProperty:description>Part of ISO 14289 the file follows</pdfaProperty:description>
    </rdf:li></rdf:Seq></pdfaSchema:property>
  </rdf:li></rdf:Bag></pdfaExtension:schemas>
</rdf:Description>`

/** Papers in English were issued without it, and keep their bytes. */
const languageOf = (language: string): string =>
  language === 'en'
    ? ''
    : `\n  <dc:language><rdf:Bag><rdf:li>${escapeXml(language)}</rdf:li></rdf:Bag></dc:language>`

/** The RDF descriptions that go into the packet, beside the PDF/A part that PDFKit adds itself. */
export function xmpDescriptions(info: Info, language: string): string {
  return `
<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/">
  <dc:format>application/pdf</dc:format>
  <dc:title>${inEveryLanguage(info.Title)}</dc:title>
  <dc:creator><rdf:Seq><rdf:li>${escapeXml(info.Author)}</rdf:li></rdf:Seq></dc:creator>
  <dc:description>${inEveryLanguage(info.Subject)}</dc:description>${languageOf(language)}
</rdf:Description>
<rdf:Description rdf:about="" xmlns:xmp="http://ns.adobe.com/xap/1.0/">
  <xmp:CreateDate>${xmpDate(info.CreationDate)}</xmp:CreateDate>
  <xmp:ModifyDate>${xmpDate(info.ModDate)}</xmp:ModifyDate>
  <xmp:CreatorTool>${escapeXml(info.Creator)}</xmp:CreatorTool>
</rdf:Description>
<rdf:Description rdf:about="" xmlns:pdf="http://ns.adobe.com/pdf/1.3/">
  <pdf:Producer>${escapeXml(info.Producer)}</pdf:Producer>
</rdf:Description>${universalAccess}
`
}
