REM Tamis in LibreOffice: paste into a module named Tamis (Tools > Macros > Edit Macros).
REM BuildSheet makes the sample sheet; TamisPost, TamisText and TamisTable are for your own macros.
Option Explicit

REM Builds the sample sheet in a new document: asks for the file sheet.csv and for the server.
Sub BuildSampleSheet
  Dim document As Object, csvFile As String, server As String
  csvFile = InputBox("Path of the file sheet.csv", "Tamis", "")
  server = InputBox("Address of the server", "Tamis", "http://127.0.0.1:7070")
  If csvFile = "" Then Exit Sub
  document = StarDesktop.loadComponentFromURL("private:factory/scalc", "_blank", 0, Array())
  FillSheet(document.Sheets.getByIndex(0), ConvertToURL(csvFile), server)
End Sub

REM Fills a sheet from a CSV file. Cells that begin with = are formulas; B1 names the server.
Sub FillSheet(sheet As Object, csvFile As String, server As String)
  Dim lines As Variant, cells As Variant, row As Long, column As Long, cell As Object
  lines = Split(Replace(ReadText(csvFile), Chr(13), ""), Chr(10))
  For row = 0 To UBound(lines)
    cells = CsvCells(lines(row))
    For column = 0 To UBound(cells)
      cell = sheet.getCellByPosition(column, row)
      If row = 0 And column = 1 Then
        cell.String = server
      ElseIf Left(cells(column), 1) = "=" Then
        cell.Formula = cells(column)
      Else
        cell.String = cells(column)
      End If
    Next column
  Next row
End Sub

REM Sends JSON and returns what is answered. An answer other than 200 has no text here, so ask with
REM errors=text to be told what is wrong.
Function TamisPost(address As String, json As String) As String
  Dim broker As Object, content As Object, body As Object, answer As Object, writer As Object
  Dim argument As New com.sun.star.ucb.PostCommandArgument2
  Dim command As New com.sun.star.ucb.Command
  body = createUnoService("com.sun.star.io.Pipe")
  writer = createUnoService("com.sun.star.io.TextOutputStream")
  writer.setOutputStream(body)
  writer.setEncoding("UTF-8")
  writer.writeString(json)
  writer.closeOutput()
  answer = createUnoService("com.sun.star.io.Pipe")
  argument.Source = body
  argument.Sink = answer
  argument.MediaType = "application/json"
  command.Name = "post"
  command.Handle = -1
  command.Argument = argument
  broker = createUnoService("com.sun.star.ucb.UniversalContentBroker")
  content = broker.queryContent(broker.createContentIdentifier(address))
  content.execute(command, 0, Nothing)
  answer.closeOutput()
  TamisPost = ReadAll(answer)
End Function

REM The text at an address.
Function TamisText(address As String) As String
  TamisText = ReadText(address)
End Function

REM A table as an array of rows, each an array of texts.
Function TamisTable(address As String) As Variant
  Dim lines As Variant, rows() As Variant, i As Long
  lines = Split(ReadText(address), Chr(13) & Chr(10))
  ReDim rows(UBound(lines))
  For i = 0 To UBound(lines)
    rows(i) = CsvCells(lines(i))
  Next i
  TamisTable = rows
End Function

Function ReadText(address As String) As String
  Dim files As Object
  files = createUnoService("com.sun.star.ucb.SimpleFileAccess")
  ReadText = ReadAll(files.openFileRead(address))
End Function

Function ReadAll(stream As Object) As String
  Dim reader As Object, text As String
  reader = createUnoService("com.sun.star.io.TextInputStream")
  reader.setInputStream(stream)
  reader.setEncoding("UTF-8")
  text = reader.readString(Array(), False)
  reader.closeInput()
  ReadAll = text
End Function

REM The cells of one line of CSV (RFC 4180): commas within quotes are text, "" is one quote.
Function CsvCells(line As String) As Variant
  Dim cells() As String, count As Long, i As Long, letter As String, quoted As Boolean
  count = 0
  ReDim cells(0)
  For i = 1 To Len(line)
    letter = Mid(line, i, 1)
    If quoted And letter = """" And Mid(line, i + 1, 1) = """" Then
      cells(count) = cells(count) & """"
      i = i + 1
    ElseIf letter = """" Then
      quoted = Not quoted
    ElseIf letter = "," And Not quoted Then
      count = count + 1
      ReDim Preserve cells(count)
    Else
      cells(count) = cells(count) & letter
    End If
  Next i
  CsvCells = cells
End Function
