SwaggerUIBundle({
  url: "/openapi.json",
  dom_id: "#operations",
  docExpansion: "list",
  // An address such as /docs#/pans/getCoating opens that call.
  deepLinking: true,
  filter: true,
  // Bounds of what stands in a query.
  showCommonExtensions: true,
  // The document is checked by nobody outside.
  validatorUrl: null,
});
